using System.Collections.Immutable;
using ChannelAudit.Impedance;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Pilot;

/// <summary>From the sites to one answer.</summary>
internal static class PilotAnswers
{
    // Rest of 4 s with both sites quiet is what a bridge needs at the least, and a contraction beside it.
    private const double LeastS = 10;

    /// <summary>Whether a recording is too short to say anything.</summary>
    public static bool IsTooShort(double durationS) => durationS < LeastS;

    /// <summary>The answer.</summary>
    /// <remarks>
    /// A task that the setup names and the recording does not have leaves its muscle unknown: no start, and no reject, can be said. Readings of contacts
    /// change no verdict of a signal; one that has to be made again leaves the start in doubt, no more.
    /// </remarks>
    public static PilotAnswer Of(ImmutableArray<PilotSite> sites, ImmutableArray<PilotJoint> joints, ImpedanceReport? readings, double durationS)
    {
        if (sites.Any(site => site.Verdict == Grade.Reject) || joints.Any(joint => joint.IsCertain))
        {
            return PilotAnswer.NotYet;
        }

        bool isTooLittle = IsTooShort(durationS) || sites.All(site => !site.IsAssessed) || sites.Any(site => site.Task is { Times: 0 });
        bool isInDoubt = sites.Any(site => site.Verdict == Grade.Questionable || !site.IsAssessed)
            || joints.Any(joint => !joint.IsSettledApart)
            || readings?.Sites.Any(site => site.Grade is ImpedanceGrade.Redo or ImpedanceGrade.Doubtful) == true;
        return isTooLittle ? PilotAnswer.CannotSay : isInDoubt ? PilotAnswer.Doubtful : PilotAnswer.Start;
    }
}
