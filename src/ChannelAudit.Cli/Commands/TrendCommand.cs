using System.Collections.Immutable;
using System.CommandLine;
using ChannelAudit.Cli.Trending;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Trends;
using ChannelAudit.Text;
using ChannelAudit.Trends;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>trend</c>: what many audits tell over months and years.</summary>
internal static class TrendCommand
{
    private const string DefaultFolder = "trend";

    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the technician or whoever runs the lab, with the audits of months and years. You get what
            changed in electrodes, amplifiers, sites and labs (channels not passed, noise floor, mains,
            bridges, impedance), since when, whether others changed too, and what to do; a page with pictures
            and tables.
            """,
        Notes =
            """
            PATH is a folder that screen wrote, or a folder of such folders. Days, labs, amplifiers and ids
            of electrodes are those of the setups that the audits keep (docs/guides/trend.md); no recording is
            opened. Of a hundred archives in which nothing changes about one shows a change. What has fewer
            than 24 recordings or 16 weeks is not assessed.

            People appear only with --own, and only where the setup says people = true below [trend]. Nobody is
            compared with another person, and nobody is named as a cause.

            Exit codes: 0 done, whatever is found; 2 wrong usage or audit; 130 interrupted; 70 our bug.
            """,
        Examples =
        [
            new("channelaudit trend audit", "one audit of many recordings, into the folder trend"),
            new("channelaudit trend audits/2024 audits/2025 --out years", "many audits together"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        Argument<string[]> paths = new("PATH") { Description = "folders of audits, or folders of such folders", Arity = ArgumentArity.OneOrMore };
        Option<string> place = new("--out") { HelpName = "FOLDER", Description = "where to: new, empty, or of an earlier trend", DefaultValueFactory = _ => DefaultFolder };
        Option<string> own = new("--own") { HelpName = "CODE", Description = "also set the recordings of this technician beside the lab's usual range" };
        Command command = new("trend", "Tells what changed over time in electrodes, amplifiers, sites and labs.") { paths, place, own };
        command.SetAction((parse, cancel) => Task.FromResult(
            Run(parse.GetRequiredValue(paths), parse.GetRequiredValue(place), parse.GetValue(own), context, cancel)));
        help.Add(command, Help);
        return command;
    }

    private static int Run(string[] paths, string place, string? own, CommandContext context, CancellationToken cancel)
    {
        TrendFolder folder = new(place);
        ImmutableArray<string> audits = TrendReading.Find(paths);
        (ImmutableArray<TrendSession> sessions, int twice) = Read(audits, context, cancel);
        TrendReport report = TrendReport.Of(sessions, cancel);
        TrendReading.RequireDays(report);
        OwnSetups? setups = own is null ? null : TrendReading.Own(report, own);
        folder.Write(report, [.. TrendText.Lead(report, audits.Length, twice)], setups);
        context.Output.Write(TrendText.Render(report, audits.Length, twice, setups));
        context.Output.Write($"\nWritten to {OneLine.Of(place)}: {string.Join(", ", TrendFolder.Written)}\n");
        return ExitCode.Done;
    }

    private static (ImmutableArray<TrendSession> Sessions, int Twice) Read(ImmutableArray<string> audits, CommandContext context, CancellationToken cancel)
    {
        ImmutableArray<TrendSession>.Builder sessions = ImmutableArray.CreateBuilder<TrendSession>();
        HashSet<(string, string)> seen = [];
        int twice = 0;
        foreach (string folder in audits)
        {
            context.Log.Debug("{Folder:l}: reading", OneLine.Of(folder));
            foreach ((string sha256, TrendSession session) in TrendReading.Of(StoredAudit.Open(folder), cancel))
            {
                if (seen.Add((sha256, session.Id)))
                {
                    sessions.Add(session);
                }
                else
                {
                    twice++;
                }
            }
        }

        return (sessions.ToImmutable(), twice);
    }
}
