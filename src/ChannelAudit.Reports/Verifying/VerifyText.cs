using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Verifying;

/// <summary>The answer of <c>verify</c> for the terminal.</summary>
public static class VerifyText
{
    private const int MostFiles = 12;

    /// <summary>All checks, the first difference, and what it comes to.</summary>
    /// <param name="head">What was looked at, and with which version.</param>
    /// <param name="checks">The checks in order.</param>
    /// <param name="again">What making it again gave; null when nothing was compared.</param>
    public static string Render(string head, IReadOnlyList<AuditCheck> checks, FolderComparison? again)
    {
        ArgumentNullException.ThrowIfNull(checks);
        StringBuilder text = new();
        text.Append(TerminalText.Clean(head)).Append("\n\n");
        int width = checks.Select(check => check.Name.Length).DefaultIfEmpty(0).Max();
        foreach (AuditCheck check in checks)
        {
            text.Append("  ").Append(Word(check.State).PadRight(13)).Append(check.Name.PadRight(width)).Append("  ").Append(TerminalText.Clean(check.Text)).Append('\n');
        }

        if (again?.First is { } first)
        {
            AddDifference(text, first, again.Differing);
        }

        int differ = checks.Count(check => check.State == CheckState.Differs);
        int open = checks.Count(check => check.State == CheckState.NotChecked);
        text.Append('\n').Append(differ > 0 ? $"{Quantities.Many(differ, "check")} of {checks.Count.Plain()} found a difference." : "Everything that was checked is the same.")
            .Append(open > 0 ? $" Not checked: {open.Plain()}, which says nothing about them.\n" : "\n");
        return text.ToString();
    }

    private static void AddDifference(StringBuilder text, FileDifference first, ImmutableArray<string> differing)
    {
        text.Append("\nFirst difference: ").Append(TerminalText.Clean(first.File)).Append(first.Place.Length == 0 ? string.Empty : ", " + TerminalText.Clean(first.Place))
            .Append("\n  there: ").Append(TerminalText.Clean(first.There)).Append("\n  again: ").Append(TerminalText.Clean(first.Again))
            .Append("\nFiles that differ (").Append(differing.Length.Plain()).Append("): ").AppendJoin(", ", differing.Take(MostFiles).Select(TerminalText.Clean))
            .Append(differing.Length > MostFiles ? $" and {(differing.Length - MostFiles).Plain()} more\n" : "\n");
    }

    private static string Word(CheckState state) => state switch
    {
        CheckState.Ok => "ok",
        CheckState.Differs => "differs",
        _ => "not checked",
    };
}
