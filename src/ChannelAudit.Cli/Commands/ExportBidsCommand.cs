using System.CommandLine;
using ChannelAudit.Reports.Bids;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Text;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>export bids</c>.</summary>
internal static class ExportBidsCommand
{
    private const string Name = "channelaudit export bids";

    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the analyst whose study is a BIDS data set, or shall become one. You get a derivative data set
            (BIDS 1.11): for each recording a channels table and an events table with status good or bad, n/a
            where a person should look first, the reasons, and JSON files that define every column. A
            recording without a BIDS name stands under the letters and digits of its id. Raw data sets are
            never written into.
            """,
        Examples =
        [
            new("channelaudit export bids study-audit --to study/derivatives/channelaudit", "beside the raw data, where BIDS expects derivatives"),
            new("channelaudit export bids study-audit --to quality", "into a data set of its own"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        Argument<string> audit = new("DIR") { Description = "the folder of an audit" };
        Option<string> to = new("--to")
        {
            HelpName = "OUT",
            Description = "the folder of the data set to write: new, empty, or an earlier export, which is brought up to date",
        };
        Command command = new("bids", "Writes the verdicts of an audit as a BIDS derivative data set.") { audit, to };
        command.SetAction((parse, cancel) => Task.FromResult(Run(
            parse.GetRequiredValue(audit), parse.GetValue(to) ?? throw UsageErrors.OptionMissing(Name, to), context, cancel)));
        help.Add(command, Help);
        return command;
    }

    private static int Run(string folder, string to, CommandContext context, CancellationToken cancel)
    {
        StoredAudit audit = StoredAudit.Open(folder);
        LedgerWarnings.Tell(context, audit);
        int files = BidsExport.Write(audit, to, cancel).Length;
        context.Output.Write($"Written to {OneLine.Of(to)}: {Quantities.Many(audit.Recordings.Length, "recording")}, {Quantities.Many(files, "file")}\n");
        return ExitCode.Done;
    }
}
