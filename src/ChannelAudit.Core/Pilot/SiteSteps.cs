using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Impedance;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Pilot;

/// <summary>What each reason at each site asks for first; the next step after it follows from the next pilot.</summary>
internal sealed class SiteSteps
{
    private static readonly ImmutableArray<string> OfContact =
        [ReasonCode.LineNoise, ReasonCode.Flatline, ReasonCode.NoiseFloor, ReasonCode.Clipping, ReasonCode.Dropout];

    private readonly ImmutableArray<PilotSite> sites;
    private readonly Contacts contacts;

    /// <summary>Prepares to propose.</summary>
    public SiteSteps(ImmutableArray<PilotSite> sites, Contacts contacts)
    {
        this.sites = sites;
        this.contacts = contacts;
    }

    /// <summary>All proposals, in the order of the sites.</summary>
    public IEnumerable<Proposal> All() => sites.SelectMany(site => site.Reasons.SelectMany(reason => Of(site, reason)).Select(step => Spared(site, step)));

    private IEnumerable<Proposal> Of(PilotSite site, SiteReason reason) => reason.Code switch
    {
        ReasonCode.Dropout => [Everywhere(StepKind.Storage, site, reason)],
        ReasonCode.Flatline => [At(StepKind.Leads, site, reason)],
        ReasonCode.Clipping => [OfClipping(site, reason)],
        ReasonCode.LineNoise => [OfMains(site, reason)],
        ReasonCode.NarrowBand => [Everywhere(StepKind.Room, site, reason)],
        ReasonCode.LowFrequency => [At(reason.InTrialsOnly ? StepKind.Still : StepKind.Fasten, site, reason)],
        ReasonCode.Pops => [At(StepKind.Leads, site, reason)],
        ReasonCode.NoiseFloor => [OfContactAt(site, reason, StepKind.Leads)],
        ReasonCode.Drift => [OfContactAt(site, reason, StepKind.Wait)],
        ReasonCode.WeakResponse => OfWeakResponse(site, reason),
        ReasonCode.LeadSwap => OfLeadSwap(site, reason),
        ReasonCode.UnusableInput => [Everywhere(StepKind.Input, site, reason)],
        _ => [],
    };

    // A reading that has fallen is waited for, one that rises has lost its gel, one beyond all waiting asks for the skin.
    // Without readings the plug comes first.
    private Proposal OfContactAt(PilotSite site, SiteReason reason, StepKind otherwise) => contacts.GradeOf(site.Name) switch
    {
        _ when contacts.IsRisingAtOne(site.Name) => At(StepKind.Leads, site, reason),
        _ when contacts.IsRising(site.Name) => At(StepKind.Renew, site, reason),
        ImpedanceGrade.Redo => At(StepKind.Prepare, site, reason),
        ImpedanceGrade.Wait => At(StepKind.Wait, site, reason) with { At = contacts.MeasureAgainAt(site.Name) },
        _ => At(otherwise, site, reason),
    };

    private Proposal OfMains(PilotSite site, SiteReason reason)
    {
        bool isEverywhere = sites.Length > 1 && sites.All(one => one.GradeOf(ReasonCode.LineNoise) != Grade.Pass || !one.IsAssessed);
        return !isEverywhere ? OfContactAt(site, reason, StepKind.Leads)
            : contacts.IsGroundGood ? Everywhere(StepKind.Room, site, reason)
            : Everywhere(StepKind.Ground, site, reason);
    }

    // Ground and contact drive an amplifier to its end as well as a contraction does; the mains or the drift beside it tells.
    private static Proposal OfClipping(PilotSite site, SiteReason reason) =>
        site.GradeOf(ReasonCode.LineNoise) == Grade.Reject || site.GradeOf(ReasonCode.Drift) == Grade.Reject
            ? At(StepKind.Leads, site, reason)
            : At(StepKind.Range, site, reason);

    private IEnumerable<Proposal> OfWeakResponse(PilotSite site, SiteReason reason)
    {
        bool hasBadContact = OfContact.Any(code => site.GradeOf(code) == Grade.Reject);
        bool isExchanged = site.GradeOf(ReasonCode.LeadSwap) == Grade.Reject;
        if (hasBadContact || isExchanged)
        {
            yield break;
        }

        yield return contacts.IsPairJoined(site.Name) ? At(StepKind.Wipe, site, reason) : At(StepKind.AskAgain, site, reason);
    }

    private IEnumerable<Proposal> OfLeadSwap(PilotSite site, SiteReason reason)
    {
        if (reason.Grade == Grade.Reject)
        {
            string[] both =
            [
                .. sites.Where(one => one == site || string.Equals(one.Name, site.Task?.Strongest, StringComparison.Ordinal)).Select(one => one.Name),
            ];
            yield return new Proposal(StepKind.Exchange, [.. both], reason.Code, IsBlocking: true, reason.Seen) { Share = reason.Share };
        }
        else if (site.Task?.AnswersMost == false)
        {
            yield return At(StepKind.AskAgain, site, reason);
        }
    }

    // Near the eye, skin is gone back to only for a site that cannot be scored.
    private static Proposal Spared(PilotSite site, Proposal step) =>
        site.IsAtEyelid && !step.IsBlocking && StepCost.TouchesSkin(step.Kind) ? step with { Kind = StepKind.Leave, At = null } : step;

    private static Proposal At(StepKind kind, PilotSite site, SiteReason reason) =>
        new(kind, [site.Name], reason.Code, reason.Grade == Grade.Reject, $"{site.Name}: {reason.Seen}") { Share = reason.Share };

    private static Proposal Everywhere(StepKind kind, PilotSite site, SiteReason reason) => At(kind, site, reason) with { Sites = [] };
}
