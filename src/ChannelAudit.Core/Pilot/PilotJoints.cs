using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Pilot;

/// <summary>Which sites are joined: what the audit found, and what taps on the lead wires and readings across add.</summary>
internal static class PilotJoints
{
    /// <summary>The pairs that a finding, the taps or a reading across call joined, in the order of the pairs.</summary>
    public static ImmutableArray<PilotJoint> Of(RecordingResult recording, TapReport? taps, Contacts contacts) =>
    [
        .. recording.Pairs
            .Select(pair => new PilotJoint(
                pair.ChannelA, pair.ChannelB, GradeOf(recording, pair), pair.Evidence.GainAb, pair.Evidence.GainBa, TapsOf(taps, pair)))
            .Select(joint => joint.Grade == Grade.Pass && contacts.AreJoined(joint.One, joint.Other) ? joint with { Grade = Grade.Questionable } : joint)
            .Where(joint => joint.Grade != Grade.Pass || joint.Taps == TapVerdict.Joined),
    ];

    // A pair finding stands with both channels; one trial's is enough to look at the two.
    private static Grade GradeOf(RecordingResult recording, PairResult pair)
    {
        Grade[] grades =
        [
            .. recording.Channels
                .SelectMany(channel => channel.Findings)
                .Where(finding => string.Equals(finding.Reason, ReasonCode.Bridge, StringComparison.Ordinal)
                    && finding.Channels.Contains(pair.ChannelA, StringComparer.Ordinal)
                    && finding.Channels.Contains(pair.ChannelB, StringComparer.Ordinal))
                .Select(finding => finding.Grade),
        ];
        return grades.Length == 0 ? Grade.Pass : grades.Max();
    }

    private static TapVerdict? TapsOf(TapReport? taps, PairResult pair) => taps?.Pairs
        .FirstOrDefault(tapped => string.Equals(tapped.One, pair.ChannelA, StringComparison.Ordinal)
            && string.Equals(tapped.Other, pair.ChannelB, StringComparison.Ordinal))?
        .Verdict;
}
