using System.Globalization;
using ChannelAudit.Pilot;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Wording;

/// <summary>What is known between two sites: what contractions hand on each way, and what taps on the lead wires say.</summary>
public static class JointWords
{
    /// <summary>A sentence for each pair that is joined or may be, then for each that taps were made on.</summary>
    public static IEnumerable<string> Of(PilotReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        foreach (PilotJoint joint in report.Joints)
        {
            yield return $"{joint.One} and {joint.Other}: {Decision(joint)}{Contractions(joint)}{Taps(report.Taps, joint.One, joint.Other)}";
        }

        foreach (TappedPair pair in (report.Taps?.Pairs ?? []).Where(pair => report.Joints.All(joint => !joint.Has(pair.One) || !joint.Has(pair.Other))))
        {
            yield return $"{pair.One} and {pair.Other}: {Verdict(pair.Verdict)}{Taps(report.Taps, pair.One, pair.Other)}";
        }
    }

    private static string Decision(PilotJoint joint) => joint.IsCertain ? "joined"
        : joint.IsSettledApart ? "not joined by the taps, though they share signal at rest"
        : joint.Grade == Grade.Reject ? "joined by the signal, apart by the taps: look"
        : "suspected";

    private static string Verdict(TapVerdict verdict) => verdict switch
    {
        TapVerdict.Joined => "joined",
        TapVerdict.Apart => "apart",
        _ => "open",
    };

    private static string Contractions(PilotJoint joint) => joint.GainOneToOther is { } there && joint.GainOtherToOne is { } back
        ? $"; of a contraction {Percent(there)} show in {joint.Other}, {Percent(back)} the other way"
        : string.Empty;

    private static string Taps(TapReport? taps, string one, string other) => taps?.Pairs.FirstOrDefault(pair =>
        string.Equals(pair.One, one, StringComparison.Ordinal) && string.Equals(pair.Other, other, StringComparison.Ordinal)) is { } pair
        ? $"; of a tap {Percent(pair.OneToOther)} and {Percent(pair.OtherToOne)}"
        : string.Empty;

    private static string Percent(double? share) =>
        share is { } value ? string.Create(CultureInfo.InvariantCulture, $"{100 * Math.Abs(value):0} %") : "not tapped";
}
