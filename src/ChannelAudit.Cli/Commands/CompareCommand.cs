using System.CommandLine;
using System.Text;
using ChannelAudit.Reports.Comparing;
using ChannelAudit.Reports.Stored;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>compare</c>: what changed between two audits, and why.</summary>
internal static class CompareCommand
{
    private const string StandardOutput = "-";

    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the analyst who has changed limits, setup or version and asks what that does to a study, and for
            the reviewer who has two audits of one study. You get what differs in what they were made with, how
            many verdicts went from what to what, and each channel and trial that changed, with the reason that
            came or went and the number with both limits. Verdicts are the computed ones, before decisions.
            """,
        Notes =
            """
            Exit codes: 0 recordings, verdicts, reasons and what was not assessed are the same, whatever the
            inputs; 1 they are not; 2 wrong usage, or no two audits of this version's layout; 130 interrupted;
            70 our bug.
            """,
        Examples =
        [
            new("channelaudit compare audit audit-lab", "what the lab's limits change"),
            new("channelaudit compare audit audit-lab --out changes.tsv", "with a row for each change, for R or pandas"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        Argument<string> a = new("A") { Description = "the folder of an audit" };
        Argument<string> b = new("B") { Description = "the folder of another audit of the same recordings" };
        Option<string> table = new("--out")
        {
            HelpName = "FILE",
            Description = "also write a table of all changes, to a file that must not be there yet; - prints the table only",
        };
        Command command = new("compare", "Says what changed between two audits of the same recordings, and why.") { a, b, table };
        command.SetAction((parse, cancel) => Task.FromResult(
            Run(parse.GetRequiredValue(a), parse.GetRequiredValue(b), parse.GetValue(table), context, cancel)));
        help.Add(command, Help);
        return command;
    }

    private static int Run(string folderA, string folderB, string? table, CommandContext context, CancellationToken cancel)
    {
        TextWriter output = context.Output;
        StoredAudit a = StoredAudit.Open(folderA);
        StoredAudit b = StoredAudit.Open(folderB);
        LedgerWarnings.Tell(context, a);
        LedgerWarnings.Tell(context, b);
        bool isPrinted = string.Equals(table, StandardOutput, StringComparison.Ordinal);
        using NewTable? file = table is null || isPrinted ? null : new NewTable(table, ChangesTsv.Header());
        if (isPrinted)
        {
            output.Write(Encoding.UTF8.GetString(ChangesTsv.Header()));
        }

        AuditComparison comparison = AuditComparison.Of(
            a,
            b,
            changes =>
            {
                file?.Add(ChangesTsv.Rows(changes));
                output.Write(isPrinted ? Encoding.UTF8.GetString(ChangesTsv.Rows(changes)) : string.Empty);
            },
            cancel);
        file?.Complete();
        output.Write(isPrinted ? string.Empty : CompareText.Render(comparison));
        return comparison.IsSame ? ExitCode.Done : ExitCode.Reached;
    }
}
