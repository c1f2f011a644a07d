using ChannelAudit.Findings;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Wording;

/// <summary>Why a recording is as it is, in a line: the reasons of channels that did not pass, then what is wrong with trials of channels that did.</summary>
internal static class RecordingReasons
{
    private const int MostOfTrials = 2;

    /// <summary>The line: <c>mains, joined sites (suspected), motion in 45 trials</c>; empty when there is nothing to say.</summary>
    public static string Of(RecordingDigest recording) => string.Join(
        ", ", recording.Reasons.Select(reason => $"{ReasonWords.For(reason).Name}{Note(recording, reason)}").Concat(OfTrials(recording)));

    /// <summary>What is odd about a recording beside its verdicts: <c>events that look odd, 2 warnings</c>; null for nothing.</summary>
    public static string? Also(RecordingDigest recording)
    {
        string[] parts =
        [
            .. HasOddEvents(recording) ? new[] { ReasonWords.For(ReasonCode.Events).Name } : [],
            .. recording.Warnings.IsEmpty ? [] : new[] { Quantities.Many(recording.Warnings.Length, "warning") },
        ];
        return parts.Length == 0 ? null : string.Join(", ", parts);
    }

    /// <summary>Whether its events look odd.</summary>
    public static bool HasOddEvents(RecordingDigest recording) => recording.Information.Contains(ReasonCode.Events, StringComparer.Ordinal);

    // One channel with a certain joint is enough to call it so.
    private static string Note(RecordingDigest recording, string reason)
    {
        string?[] notes =
        [
            .. recording.Channels.Where(channel => channel.Verdict != Grade.Pass && channel.Reasons.Contains(reason, StringComparer.Ordinal))
                .Select(channel => channel.ByReason.FirstOrDefault(one => string.Equals(one.Reason, reason, StringComparison.Ordinal))?.Note)
                .Distinct(StringComparer.Ordinal),
        ];
        bool isCertain = string.Equals(reason, ReasonCode.Bridge, StringComparison.Ordinal) && notes.Contains(null, StringComparer.Ordinal);
        string words = string.Join(", ", notes.OfType<string>());
        return isCertain || words.Length == 0 ? string.Empty : $" ({words})";
    }

    private static IEnumerable<string> OfTrials(RecordingDigest recording) => recording.Channels
        .Where(channel => channel.Verdict == Grade.Pass)
        .SelectMany(channel => channel.ByReason)
        .Where(reason => reason.Trials > 0 && !recording.Reasons.Contains(reason.Reason, StringComparer.Ordinal))
        .GroupBy(reason => reason.Reason, StringComparer.Ordinal)
        .Select(group => (Reason: group.Key, Trials: group.Sum(reason => reason.Trials)))
        .OrderByDescending(reason => reason.Trials)
        .ThenBy(reason => reason.Reason, StringComparer.Ordinal)
        .Take(MostOfTrials)
        .Select(reason => $"{ReasonWords.For(reason.Reason).Name} in {Quantities.Many(reason.Trials, "trial")}");
}
