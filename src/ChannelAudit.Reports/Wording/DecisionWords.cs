using System.Globalization;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Wording;

/// <summary>Decisions of persons in words; names, reasons and labels in them are text of others.</summary>
public static class DecisionWords
{
    /// <summary>What stands for a decision where there is no room for who and why.</summary>
    public const string Short = "decided by a person";

    /// <summary>The day: <c>2026-03-12</c>.</summary>
    public static string Day(Decision decision)
    {
        ArgumentNullException.ThrowIfNull(decision);
        return decision.At.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
    }

    /// <summary>Day and time: <c>2026-03-12 12:00 UTC</c>.</summary>
    public static string Time(Decision decision)
    {
        ArgumentNullException.ThrowIfNull(decision);
        return decision.At.UtcDateTime.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture);
    }

    /// <summary>Who decided, when and why, and what is computed: for one channel or trial.</summary>
    /// <param name="decision">The decision that holds.</param>
    /// <param name="computed">The computed verdict.</param>
    public static string Of(Decision decision, Grade computed)
    {
        ArgumentNullException.ThrowIfNull(decision);
        return $"decided by {decision.By} on {Day(decision)}: {decision.Reason}; computed: {VerdictWords.Code(computed)}";
    }

    /// <summary>What has become of a decision, with its note.</summary>
    public static string State(StatedDecision decision)
    {
        ArgumentNullException.ThrowIfNull(decision);
        return decision.State switch
        {
            DecisionState.InForce => decision.Note.Length == 0 ? "in force" : $"in force; {decision.Note}",
            DecisionState.Superseded => $"superseded {decision.Note}",
            DecisionState.Withdrawn => $"withdrawn {decision.Note}",
            _ => $"stale, not applied: {decision.Note}",
        };
    }

    /// <summary>The computed verdicts that a decision stood over: <c>reject (line-noise)</c>.</summary>
    public static string ComputedThen(Decision decision)
    {
        ArgumentNullException.ThrowIfNull(decision);
        return string.Join("; ", decision.Computed.Select(one =>
            (decision.Channel is null ? $"{one.Channel}: " : string.Empty) + VerdictWords.Code(one.Verdict) + (one.Reasons.IsEmpty ? string.Empty : $" ({string.Join(", ", one.Reasons)})")));
    }

    /// <summary>How many decisions a run has, by what has become of them; null when there are none.</summary>
    public static string? Count(DecisionsDigest? decisions)
    {
        if (decisions is null || decisions.Mark.Lines == 0)
        {
            return null;
        }

        string[] parts =
        [
            .. new[] { (decisions.InForce, "in force"), (decisions.Superseded, "superseded"), (decisions.Withdrawn, "withdrawn"), (decisions.Stale, "stale (not applied)") }
                .Where(part => part.Item1 > 0)
                .Select(part => $"{part.Item1.Plain()} {part.Item2}"),
        ];
        return $"Decisions of persons: {string.Join(", ", parts)}.";
    }
}
