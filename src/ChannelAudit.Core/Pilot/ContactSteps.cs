using System.Collections.Immutable;
using ChannelAudit.Impedance;

namespace ChannelAudit.Pilot;

/// <summary>What readings alone ask for, at sites whose signal is no reason to do anything.</summary>
internal static class ContactSteps
{
    /// <summary>The proposals; none of them is blocking, since readings change no verdict.</summary>
    public static IEnumerable<Proposal> Of(ImmutableArray<PilotSite> sites, Contacts contacts)
    {
        if (contacts.IsGroundBad)
        {
            yield return new Proposal(StepKind.Ground, [], null, IsBlocking: false, "the ground reads too high at every site");
        }

        foreach (PilotSite site in sites)
        {
            StepKind? kind = contacts.IsPairJoined(site.Name) ? StepKind.Wipe
                : contacts.IsRising(site.Name) && contacts.GradeOf(site.Name) is not ImpedanceGrade.Good ? StepKind.Renew
                : contacts.GradeOf(site.Name) switch
                {
                    ImpedanceGrade.Wait => StepKind.Wait,
                    ImpedanceGrade.Redo => StepKind.Prepare,
                    ImpedanceGrade.Doubtful => StepKind.Measure,
                    _ => null,
                };
            if (kind is { } step)
            {
                bool isSpared = site.IsAtEyelid && StepCost.TouchesSkin(step);
                yield return new Proposal(
                    isSpared ? StepKind.Leave : step,
                    [site.Name],
                    null,
                    IsBlocking: false,
                    $"{site.Name}: {contacts.Words(site.Name)}",
                    step == StepKind.Wait ? contacts.MeasureAgainAt(site.Name) : null);
            }
        }
    }
}
