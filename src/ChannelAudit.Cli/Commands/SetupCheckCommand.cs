using System.Collections.Immutable;
using System.CommandLine;
using ChannelAudit.Drafts;
using ChannelAudit.Setup;
using ChannelAudit.Text;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>setup check</c>.</summary>
internal static class SetupCheckCommand
{
    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For whoever has written or changed a setup file, before the participant arrives. You get the sites
            and their channels, or the line that is wrong and what was probably meant (exit code 2). With a
            recording of the study, also whether it has these channels and the labels of rest and tasks. What
            is still to be filled in is named; that alone is no error (exit code 0).
            """,
        Examples =
        [
            new("channelaudit setup check setup.toml", "names the sites, or what is wrong and where"),
            new("channelaudit setup check setup.toml P07.edf", "also whether the recording has what the setup names"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        var file = new Argument<string>("FILE") { Description = "the setup file" };
        var recording = new Argument<string?>("RECORDING") { Description = "a recording of the study, to be held against it", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("check", "Checks a setup file and prints its sites.") { file, recording };
        command.SetAction(parse =>
        {
            Run(parse.GetRequiredValue(file), parse.GetValue(recording), context.Output);
            return ExitCode.Done;
        });
        help.Add(command, Help);
        return command;
    }

    private static void Run(string file, string? recording, TextWriter output)
    {
        StudySetup setup = SetupFile.Read(file);
        if (recording is not null && !File.Exists(recording))
        {
            throw UsageErrors.NoFile("setup check", recording);
        }

        SetupFit? fit = recording is null ? null : SetupFit.Of(setup, recording);
        ImmutableArray<string> gaps = SetupGaps.Of(setup);
        output.Write($"{setup.FileName}: {(gaps.IsEmpty ? "in order" : "can be read, not yet filled in")}; {Number(setup.Sites.Length, "site")}\n");
        foreach (SiteSetup site in setup.Sites)
        {
            output.Write($"  {site.Name}: channel '{site.Channel}'\n");
        }

        foreach (string line in SetupContents.Of(setup))
        {
            output.Write($"  {line}\n");
        }

        if (!gaps.IsEmpty)
        {
            output.Write("still to fill in, or to leave where you do not know:\n");
            foreach (string gap in gaps)
            {
                output.Write($"  {gap}\n");
            }
        }

        if (fit is not null)
        {
            Print(fit, output);
        }
    }

    private static void Print(SetupFit fit, TextWriter output)
    {
        string source = fit.Source.ToString().ToLowerInvariant();
        output.Write($"{OneLine.Of(fit.RecordingFile)}: fits; {Number(fit.Channels, "channel")}, {Number(fit.Trials, "trial")} from {source}\n");
        if (fit.Person.Participant is { } participant)
        {
            output.Write($"  participant {OneLine.Of(participant)}{(fit.Person.Group is { } group ? $", group {OneLine.Of(group)}" : string.Empty)} (as '{OneLine.Of(fit.Path)}' below the folder screened)\n");
        }

        foreach (RecordingOverride one in fit.Overrides)
        {
            output.Write($"  with what is different for {SetupContents.Patterns(one)}\n");
        }

        foreach (LabelFit label in fit.Labels)
        {
            output.Write($"  {label.Place}: {Number(label.Trials, "trial")} labelled '{OneLine.Of(label.Label)}'\n");
        }
    }

    private static string Number(int count, string noun) => FormattableString.Invariant($"{count} {noun}{(count == 1 ? string.Empty : "s")}");
}
