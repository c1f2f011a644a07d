using System.Text;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Deciding;

/// <summary>The ledger of an audit for the terminal: every line, what has become of it, the computed verdict beside the person's.</summary>
public static class LedgerList
{
    /// <summary>The text, each line ended by LF.</summary>
    /// <param name="audit">The audit; results are read only of recordings that were decided about.</param>
    /// <param name="style">What the terminal can show.</param>
    /// <exception cref="ChannelAuditException">When a result is not there or damaged.</exception>
    public static string Render(StoredAudit audit, TerminalStyle style)
    {
        ArgumentNullException.ThrowIfNull(audit);
        ArgumentNullException.ThrowIfNull(style);
        StringBuilder text = new();
        if (audit.Decisions.Lines.IsEmpty)
        {
            text.Append("Nothing has been decided here: every final verdict is the computed one.\n");
        }

        Dictionary<int, StatedDecision> states = States(audit);
        foreach (Decision line in audit.Decisions.Lines)
        {
            foreach (string part in Lines(line, states.GetValueOrDefault(line.Number), audit.Decisions))
            {
                string clean = TerminalText.Clean(part);
                TerminalText.AppendLines(text, clean.TrimStart(), clean.StartsWith(' ') ? "    " : string.Empty, "    ", style);
            }
        }

        if (audit.Decisions.Torn is { } torn)
        {
            TerminalText.AppendLines(text, $"warning: {torn.File}, {torn.Place}: {torn.Message}", string.Empty, "  ", style);
        }

        return TerminalText.Plain(text.ToString(), style);
    }

    /// <summary>Says of lines that were just added that they are kept.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="style">What the terminal can show.</param>
    public static string Acknowledge(IEnumerable<Decision> lines, TerminalStyle style)
    {
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(style);
        StringBuilder text = new();
        foreach (Decision line in lines)
        {
            TerminalText.AppendLines(text, TerminalText.Clean($"Kept as decision {Head(line)}"), string.Empty, "  ", style);
        }

        return TerminalText.Plain(text.ToString(), style);
    }

    private static Dictionary<int, StatedDecision> States(StoredAudit audit) => audit.Recordings
        .Where(recording => audit.Decisions.About(recording.Id).Any())
        .SelectMany(recording => audit.ResultOf(recording).Decisions?.All ?? [])
        .ToDictionary(one => one.Decision.Number);

    private static IEnumerable<string> Lines(Decision line, StatedDecision? stated, Ledger ledger)
    {
        string who = $"  {DecisionWords.Time(line)}, {line.By}: {line.Reason}";
        if (line.Withdraws is not null)
        {
            yield return Head(line);
            yield return who;
            yield break;
        }

        yield return Head(line);
        yield return who;
        yield return "  " + (stated is not null ? DecisionWords.State(stated)
            : ledger.WithdrawnBy(line.Number) is { } by ? $"withdrawn by {by.Plain()}"
            : "stale, not applied: the recording is not in this audit");
    }

    private static string Head(Decision line) => line.Verdict is not { } verdict
        ? $"{line.Number.Plain()}: withdraws decision {(line.Withdraws ?? 0).Plain()}"
        : $"{line.Number.Plain()}: {line.Recording}, {line.Subject}: {VerdictWords.Code(verdict)}; computed: {DecisionWords.ComputedThen(line)}";
}
