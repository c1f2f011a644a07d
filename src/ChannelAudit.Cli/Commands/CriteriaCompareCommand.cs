using System.Collections.Immutable;
using System.CommandLine;
using ChannelAudit.Criteria;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>criteria compare</c>.</summary>
internal static class CriteriaCompareCommand
{
    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the reviewer who holds a frozen criteria file against another, and for the analyst with two
            files of limits. You get for each file whether it was frozen and changed since, and every list of
            limits that differs between the two.
            """,
        Notes = "Exit codes: 0 the same limits; 1 they differ; 2 wrong usage or a file that is not in order.",
        Examples = [new("channelaudit criteria compare frozen.toml lab.toml", "are the lab's limits still those that were frozen?")],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        Argument<string> a = new("A") { Description = "a criteria file, a frozen one for instance" };
        Argument<string> b = new("B") { Description = "another criteria file" };
        Command command = new("compare", "Says which limits differ between two criteria files, and whether each was frozen.") { a, b };
        command.SetAction(parse => Run(CriteriaFile.Read(parse.GetRequiredValue(a)), CriteriaFile.Read(parse.GetRequiredValue(b)), context.Output));
        help.Add(command, Help);
        return command;
    }

    private static int Run(AuditCriteria a, AuditCriteria b, TextWriter output)
    {
        WriteFile(output, "A", a);
        WriteFile(output, "B", b);
        ImmutableArray<string> lines = CriteriaDifferences.Lines(a, b);
        output.Write(lines.IsEmpty ? "The limits are the same.\n" : $"{Quantities.Many(lines.Length, "list")} of limits differ{(lines.Length == 1 ? "s" : string.Empty)} (A -> B)\n");
        foreach (string line in lines)
        {
            output.Write($"  {line}\n");
        }

        return lines.IsEmpty ? ExitCode.Done : ExitCode.Reached;
    }

    private static void WriteFile(TextWriter output, string name, AuditCriteria criteria)
    {
        output.Write($"{name}: {FreezeWords.Of(criteria)}; SHA-256 of the limits: {criteria.Sha256}\n");
        foreach (string difference in criteria.Frozen?.Differences ?? [])
        {
            output.Write($"  since it was frozen: {difference}\n");
        }
    }
}
