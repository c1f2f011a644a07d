using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Impedance;

namespace ChannelAudit.Pilot;

/// <summary>What to do next: at most five steps, what cannot be scored first, then the least redo first.</summary>
/// <remarks>
/// Among steps that come equally near to the face, the one that may rescue most trials a minute in the chair leads. Every site of a session has the same
/// trials, so what counts is the share of them that the fault spoils (<see cref="SiteReason.Share"/>): 1 for a fault that holds all through, 0.3 for one that
/// holds for 30 % of the time; a quarter of that where the site is only in doubt. Sites add up.
/// </remarks>
internal static class NextSteps
{
    /// <summary>The most steps that a person is given at once.</summary>
    public const int Most = 5;

    private const double DoubtfulCounts = 0.25;
    private const int MostSeen = 3;

    /// <summary>The steps in order.</summary>
    public static ImmutableArray<PilotStep> Of(ImmutableArray<PilotSite> sites, ImmutableArray<PilotJoint> joints, ImpedanceReport? readings, double durationS)
    {
        Contacts contacts = new(readings);
        Proposal[] ofSignals = [.. Missing(sites, durationS), .. JointSteps.Of(joints, sites, contacts), .. new SiteSteps(sites, contacts).All()];

        Proposal[] ofReadings = [.. ContactSteps.Of(sites, contacts).Where(step => !ofSignals.Any(one => IsRepeated(step, one)))];
        Proposal[] all = [.. ofSignals, .. ofReadings];
        return
        [
            .. all
                .Where(step => step.Kind != StepKind.Leave || !all.Any(other => IsWorkAt(other, step.Sites[0])))
                .GroupBy(step => (step.Kind, Where: IsOfPair(step.Kind) ? string.Join('\n', step.Sites) : string.Empty))
                .Select(group => Together([.. group], sites))
                .OrderByDescending(step => step.IsBlocking)
                .ThenBy(step => StepCost.TouchOf(step.Kind))
                .ThenByDescending(step => step.Minutes > 0 ? step.Rescues / step.Minutes : 0)
                .ThenBy(step => step.Kind)
                .Take(Most),
        ];
    }

    // Where the signal asks for a step already, the readings only repeat it: the same one for the whole set-up, or any at the site.
    private static bool IsRepeated(Proposal ofReadings, Proposal ofSignal) => ofReadings.Sites.IsEmpty
        ? ofSignal.Kind == ofReadings.Kind
        : ofSignal.Kind != StepKind.Record && ofReadings.Sites.Any(site => ofSignal.Sites.Contains(site, StringComparer.Ordinal));

    private static IEnumerable<Proposal> Missing(ImmutableArray<PilotSite> sites, double durationS)
    {
        Proposal[] tasks =
        [
            .. sites
                .Where(site => site.Task is { Times: 0 })
                .Select(site => new Proposal(StepKind.Record, [site.Name], null, IsBlocking: true, $"{site.Name}: '{site.Task!.Task}' was not recorded")),
        ];
        return tasks.Length > 0 || !PilotAnswers.IsTooShort(durationS)
            ? tasks
            : [new Proposal(StepKind.Record, [], null, IsBlocking: true, FormattableString.Invariant($"the recording lasts {durationS:0.#} s"))];
    }

    // Two sites at once are not three sites at once.
    private static bool IsOfPair(StepKind kind) => kind is StepKind.Wipe or StepKind.Settle or StepKind.Exchange;

    // Where a site is worked at anyway, leaving it alone would contradict.
    private static bool IsWorkAt(Proposal step, string site) =>
        step.IsBlocking && step.Kind != StepKind.Leave && step.Sites.Contains(site, StringComparer.Ordinal);

    private static PilotStep Together(Proposal[] alike, ImmutableArray<PilotSite> sites)
    {
        HashSet<string> named = new(alike.SelectMany(step => step.Sites), StringComparer.Ordinal);
        bool isBlocking = alike.Any(step => step.IsBlocking);
        return new PilotStep(
            alike[0].Kind,
            [.. sites.Where(site => named.Contains(site.Name)).Select(site => site.Name)],
            [.. alike.Select(step => step.Reason).OfType<string>().Distinct(StringComparer.Ordinal).OrderBy(code => ReasonCode.All.IndexOf(code))],
            isBlocking,
            named.Count == 0
                ? sites.Length * Gain(alike)
                : named.Sum(site => Gain([.. alike.Where(step => step.Sites.Contains(site, StringComparer.Ordinal))])),
            string.Join("; ", alike.Where(step => step.IsBlocking == isBlocking).Select(step => step.Because).Distinct(StringComparer.Ordinal).Take(MostSeen)),
            alike.Select(step => step.At).OfType<string>().Max(StringComparer.Ordinal),
            sites.Any(site => site.IsAtEyelid && named.Contains(site.Name)));
    }

    // Several reasons of one site spoil the same trials: the widest counts.
    private static double Gain(Proposal[] ofSite) => ofSite.Max(step => step.Share * (step.IsBlocking ? 1 : DoubtfulCounts));
}
