using System.Text;
using ChannelAudit.Criteria;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Methods;

/// <summary>The tables behind the methods paragraph: exclusions by reason, channel and condition, what was not assessed, and the limits.</summary>
internal static class MethodsTables
{
    /// <summary>Adds them to the text.</summary>
    public static void Append(StringBuilder text, MethodsTally tally, MethodsOrigin origin)
    {
        text.Append("Cells: count of all, share, 95 % interval.\n\n");
        AppendReasons(text, tally);
        AppendVerdicts(text, "channel", tally.ByChannel);
        AppendVerdicts(text, "condition", tally.ByCondition);
        AppendOpen(text, tally);
        AppendLimits(text, origin.Criteria);
    }

    private static void AppendReasons(StringBuilder text, MethodsTally tally)
    {
        Head(text, "Exclusions by reason", "reason", "trials rejected", "trials questionable", "channels rejected", "channels questionable");
        foreach ((string reason, ReasonTally own) in tally.ByReason.Where(entry => IsFound(entry.Tally)))
        {
            Row(
                text,
                Reason(reason),
                new Share(own.Trials(Grade.Reject), tally.Trials.Total).ToString(),
                new Share(own.Trials(Grade.Questionable), tally.Trials.Total).ToString(),
                new Share(own.Channels(Grade.Reject), tally.Channels.Total).ToString(),
                new Share(own.Channels(Grade.Questionable), tally.Channels.Total).ToString());
        }

        text.Append("\nA trial or channel can carry several reasons: the rows do not add up to the exclusions. A reason listed at a rejected trial may by itself"
            + " have made it questionable only.\n\n");
    }

    private static bool IsFound(ReasonTally tally) =>
        tally.Trials(Grade.Reject) + tally.Trials(Grade.Questionable) + tally.Channels(Grade.Reject) + tally.Channels(Grade.Questionable) > 0;

    private static void AppendVerdicts(StringBuilder text, string what, IReadOnlyDictionary<string, VerdictTally> tallies)
    {
        Head(text, $"Scored trials by {what}", what, "pass", "questionable", "reject");
        foreach ((string name, VerdictTally tally) in tallies)
        {
            Row(
                text,
                name.Length == 0 ? "without a label" : MarkdownText.Escape(name),
                tally.Of(Grade.Pass).ToString(),
                tally.Of(Grade.Questionable).ToString(),
                tally.Of(Grade.Reject).ToString());
        }

        text.Append('\n');
    }

    private static void AppendOpen(StringBuilder text, MethodsTally tally)
    {
        Head(text, "Not assessed", "reason", "trials", "channels");
        foreach ((string reason, ReasonTally own) in tally.ByReason.Where(entry => entry.Tally.TrialsNotAssessed + entry.Tally.ChannelsNotAssessed > 0))
        {
            Row(
                text,
                Reason(reason),
                new Share(own.TrialsNotAssessed, tally.Trials.Total).ToString(),
                new Share(own.ChannelsNotAssessed, tally.Channels.Total).ToString());
        }

        text.Append('\n');
    }

    private static void AppendLimits(StringBuilder text, AuditCriteria criteria)
    {
        Head(text, "Limits in force", "reason", "questionable", "reject", "source");
        foreach (Criterion criterion in criteria.All)
        {
            Row(
                text,
                Reason(criterion.Reason),
                LimitWords.Questionable(criterion, LimitWords.Off),
                LimitWords.Reject(criterion, LimitWords.Off),
                MarkdownText.Escape(criterion.Source));
        }

        text.Append("\nA limit counts as reached at its own value; \"and\": all are needed, \"or\": one is enough.\n");
    }

    private static string Reason(string code) => $"{ReasonWords.For(code).Name} (`{code}`)";

    private static void Head(StringBuilder text, string title, params ReadOnlySpan<string> columns)
    {
        text.Append("## ").Append(title).Append("\n\n");
        Row(text, columns);
        text.Append('|');
        foreach (string _ in columns)
        {
            text.Append(" --- |");
        }

        text.Append('\n');
    }

    private static void Row(StringBuilder text, params ReadOnlySpan<string> cells)
    {
        text.Append('|');
        foreach (string cell in cells)
        {
            text.Append(' ').Append(cell).Append(" |");
        }

        text.Append('\n');
    }
}
