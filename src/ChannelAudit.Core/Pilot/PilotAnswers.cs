using System.Collections.Immutable;
using ChannelAudit.Impedance;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Pilot;

/// <summary>From the sites to one answer.</summary>
internal static class PilotAnswers
{
    /// <summary>The answer.</summary>
    /// <remarks>Readings of contacts change no verdict of a signal; one that has to be made again leaves the start in doubt, no more.</remarks>
    public static PilotAnswer Of(ImmutableArray<PilotSite> sites, ImmutableArray<PilotJoint> joints, ImpedanceReport? readings)
    {
        if (sites.Any(site => site.Verdict == Grade.Reject) || joints.Any(joint => joint.IsCertain))
        {
            return PilotAnswer.NotYet;
        }

        return sites.All(site => !site.IsAssessed) ? PilotAnswer.CannotSay
            : sites.Any(site => site.Verdict == Grade.Questionable || !site.IsAssessed) || readings?.Sites.Any(site => site.Grade == ImpedanceGrade.Redo) == true ? PilotAnswer.Doubtful
            : PilotAnswer.Start;
    }
}
