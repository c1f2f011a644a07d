using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reconciling;

/// <summary>One row in a line: <c>line 4, K07 cheek, whole channel: reject, line-noise, line_rms 20.9 µV, limit 5 µV; 14 of 29 trials reject; the list says: lead came loose</c>.</summary>
internal static class ReconcileWords
{
    /// <summary>The line.</summary>
    public static string Of(ReconciledRow row)
    {
        List<string> parts = [];
        if (row.Verdict is { } verdict)
        {
            parts.Add(Verdict(row, verdict));
        }

        if (row.Trial is null && row.Cells.Total > 0)
        {
            parts.Add(Trials(row.Cells));
        }

        if (row.Note is { } note)
        {
            parts.Add(note);
        }

        if (row.Verdict == Grade.Pass && !row.NotAssessed.IsEmpty)
        {
            parts.Add($"not assessed: {string.Join(", ", row.NotAssessed)}");
        }

        if (row.DeclaredReason is { } reason)
        {
            parts.Add($"the list says: {reason}");
        }

        string line = row.Line is { } number ? $"line {number.Plain()}, " : string.Empty;
        return TerminalText.Clean($"{line}{Place(row)}: {string.Join("; ", parts)}");
    }

    private static string Place(ReconciledRow row)
    {
        string channel = row.Channel ?? "all channels";
        string condition = row.Condition is { } label ? $" ({label})" : string.Empty;
        return row.Trial is { } trial ? $"{row.Recording}, {channel}, trial {trial}{condition}" : $"{row.Recording}, {channel}{(row.Channel is null ? string.Empty : ", whole channel")}";
    }

    private static string Verdict(ReconciledRow row, Grade verdict)
    {
        string declared = row.Declared is { } given && given != Grade.Reject ? $"list {VerdictWords.Code(given)}, computed " : string.Empty;
        string final = row.Final is { } after && after != verdict ? $" (after decisions {VerdictWords.Code(after)})" : string.Empty;
        string words = $"{declared}{VerdictWords.Code(verdict)}{final}";
        if (row is not { Evidence: { } evidence, EvidenceReason: { } reason })
        {
            return row.Reasons.IsEmpty ? words : $"{words}, {string.Join(", ", row.Reasons)}";
        }

        string limit = Quantities.WithUnit(evidence.Limit, evidence.Unit);
        return $"{words}, {reason}, {evidence.Measure} {Quantities.WithUnit(evidence.Value, evidence.Unit)}, limit {limit}";
    }

    private static string Trials(VerdictCounts cells) => cells.Reject == 0 && cells.Questionable == 0
        ? $"all {Quantities.Many(cells.Total, "trial")} pass"
        : $"{cells.Reject.Plain()} of {Quantities.Many(cells.Total, "trial")} reject, {cells.Questionable.Plain()} questionable";
}
