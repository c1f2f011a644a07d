using System.CommandLine;
using System.Text;
using ChannelAudit.Lists;
using ChannelAudit.Reports.Reconciling;
using ChannelAudit.Reports.Stored;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>reconcile</c>: a lab's list of exclusions against the evidence.</summary>
internal static class ReconcileCommand
{
    private const string StandardOutput = "-";

    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the reviewer who has a lab's list of exclusions and asks whether the signal bears them out. You
            get each line with the audit's answer (supported, partly, not supported) and the evidence, every
            computed reject that the list keeps, two-way tables, and Cohen's kappa with its interval.
            """,
        Notes =
            """
            EXCLUSIONS is a table, separated by tabs, commas or semicolons (docs/reconcile.md):
              recording  channel  trial  reason
              K07        cheek    n/a    lead came loose
              K15.edf    brow     3      no signal
            n/a or nothing: all channels, or the whole channel. A recording may be its id, file name or path.
            With a column verdict (pass, questionable, reject) only reject excludes, and grades are compared.

            Exit codes: 0 every line is supported and nothing rejected was kept; 1 something differs, a line
            without a match included; 2 wrong usage, list or audit; 130 interrupted; 70 our bug.
            """,
        Examples =
        [
            new("channelaudit reconcile audit exclusions.csv", "what the audit says to each line"),
            new("channelaudit reconcile audit exclusions.csv --out answers.tsv", "with a table to send back"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        Argument<string> folder = new("DIR") { Description = "the folder of an audit" };
        Argument<string> list = new("EXCLUSIONS") { Description = "a table of what was left out: recording, channel, trial, reason" };
        Option<string> table = new("--out")
        {
            HelpName = "FILE",
            Description = "also write a table, a row for each line and each reject that was kept, to a file that must not be there yet; - prints the table only",
        };
        Command command = new("reconcile", "Holds a list of declared exclusions against the evidence of an audit.") { folder, list, table };
        command.SetAction((parse, cancel) => Task.FromResult(
            Run(parse.GetRequiredValue(folder), parse.GetRequiredValue(list), parse.GetValue(table), context, cancel)));
        help.Add(command, Help);
        return command;
    }

    private static int Run(string folder, string listFile, string? table, CommandContext context, CancellationToken cancel)
    {
        TextWriter output = context.Output;
        StoredAudit audit = StoredAudit.Open(folder);
        LedgerWarnings.Tell(context, audit);
        ExclusionList list = ExclusionList.Read(listFile);
        bool isPrinted = string.Equals(table, StandardOutput, StringComparison.Ordinal);
        using NewTable? file = table is null || isPrinted ? null : new NewTable(table, ReconcileTsv.Header());
        if (isPrinted)
        {
            output.Write(Encoding.UTF8.GetString(ReconcileTsv.Header()));
        }

        Reconciliation found = Reconciliation.Of(
            audit,
            list,
            rows =>
            {
                file?.Add(ReconcileTsv.Rows(rows));
                output.Write(isPrinted ? Encoding.UTF8.GetString(ReconcileTsv.Rows(rows)) : string.Empty);
            },
            cancel);
        file?.Complete();
        output.Write(isPrinted ? string.Empty : ReconcileText.Render(found));
        return found.IsSame ? ExitCode.Done : ExitCode.Reached;
    }
}
