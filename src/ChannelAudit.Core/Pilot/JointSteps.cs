using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Pilot;

/// <summary>What joined sites ask for: certain ones are parted, suspected ones are settled first, and those that taps have cleared are left alone.</summary>
internal static class JointSteps
{
    /// <summary>The proposals, one a pair.</summary>
    public static IEnumerable<Proposal> Of(ImmutableArray<PilotJoint> joints, ImmutableArray<PilotSite> sites, Contacts contacts)
    {
        foreach (PilotJoint joint in joints.Where(joint => !joint.IsSettledApart))
        {
            SiteReason? reason = sites
                .Where(site => joint.Has(site.Name))
                .SelectMany(site => site.Reasons)
                .FirstOrDefault(reason => string.Equals(reason.Code, ReasonCode.Bridge, StringComparison.Ordinal));
            string text = reason?.Seen
                ?? contacts.Joined.Where(pair => joint.Has(pair.One) && joint.Has(pair.Other)).Select(pair => pair.Seen).FirstOrDefault()
                ?? $"{joint.One} and {joint.Other} may be joined";
            bool isKnown = joint.IsCertain || contacts.AreJoined(joint.One, joint.Other);
            yield return new Proposal(isKnown ? StepKind.Wipe : StepKind.Settle, [joint.One, joint.Other], ReasonCode.Bridge, joint.IsCertain, text)
            {
                Share = reason?.Share ?? 1,
            };
        }
    }
}
