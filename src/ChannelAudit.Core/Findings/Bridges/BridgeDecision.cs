using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Measures;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Bridges;

/// <summary>Decides from medians whether two channels share an electrode path.</summary>
/// <remarks>
/// Engineering judgement on the physics of joined electrodes (docs/measures/bridge.md). The high band at rest decides, not ρ at rest: with
/// unequal contact impedances a single bridge can have ρ near 0 at rest. High correlation in a contraction alone proves nothing: a tenth of
/// crosstalk gives 0.8. The imaginary part only rules out what is delayed.
/// </remarks>
/// <param name="Grade">Pass, questionable (suspected) or reject (bridged).</param>
/// <param name="Evidence">The medians that passed their limits.</param>
internal sealed record BridgeDecision(Grade Grade, ImmutableArray<Evidence> Evidence)
{
    private const double LeastRestSeconds = 4;
    private const double NearZero = 0.1;

    // Crosstalk of a quarter each way, the most that is published for the face, gives 0.47.
    /// <summary>A correlation at rest that tissue does not bring.</summary>
    public const double BeyondTissue = 0.6;
    private const double FloorDeviations = 5;
    private const double DefaultRhoActive = 0.90;

    /// <summary>The largest size of the imaginary part that simultaneous signals have.</summary>
    public const double MostImaginary = 0.1;

    /// <summary>Nothing found.</summary>
    public static BridgeDecision Clear { get; } = new(Grade.Pass, []);

    /// <summary>Decides.</summary>
    /// <param name="medians">The pair's medians.</param>
    /// <param name="bands">The pair's bands.</param>
    /// <param name="criterion">The limits.</param>
    /// <param name="isShared">Whether every third channel shares the high band at rest alike: a common source.</param>
    public static BridgeDecision Of(BridgeMedians medians, PairBands bands, Criterion criterion, bool isShared)
    {
        foreach (LimitSet set in criterion.Reject)
        {
            if (bands.HasLow && LimitJudgement.IsReached(set, medians) && RejectHolds(set, medians, bands, criterion))
            {
                return new BridgeDecision(Grade.Reject, LimitJudgement.EvidenceOf(set, medians));
            }
        }

        foreach (LimitSet set in criterion.Questionable)
        {
            if (bands.HasLow && LimitJudgement.IsReached(set, medians) && SuspicionHolds(set, medians, bands, isShared))
            {
                return new BridgeDecision(Grade.Questionable, LimitJudgement.EvidenceOf(set, medians));
            }
        }

        return Clear;
    }

    /// <summary>What the correlation above 300 Hz must reach to be more than chance: five standard deviations of what independent channels show.</summary>
    public static double LeastHigh(BridgeMedians medians, PairBands bands) =>
        FloorDeviations / Math.Sqrt(2 * bands.HighWidthHz * medians.RestSeconds);

    private static double RhoActive(Criterion criterion) => criterion.Reject
        .SelectMany(set => set.Limits)
        .FirstOrDefault(limit => string.Equals(limit.Measure, "rho_active", StringComparison.Ordinal))?.Value ?? DefaultRhoActive;

    private static bool Uses(LimitSet set, string measure) =>
        set.Limits.Any(limit => string.Equals(limit.Measure, measure, StringComparison.Ordinal));

    private static bool RejectHolds(LimitSet set, BridgeMedians medians, PairBands bands, Criterion criterion)
    {
        if (Uses(set, "rho_high_rest"))
        {
            return RestHolds(medians) && (medians.RhoActive is not { } active || Math.Abs(active) >= RhoActive(criterion));
        }

        if (Uses(set, "rho_active") || Uses(set, "gain_active"))
        {
            return ActiveHolds(medians);
        }

        return RestHolds(medians) && !bands.HasHigh && medians.RhoActiveA is null && medians.RhoActiveB is null;
    }

    private static bool SuspicionHolds(LimitSet set, BridgeMedians medians, PairBands bands, bool isShared)
    {
        if (!Uses(set, "rho_high_rest"))
        {
            return ActiveHolds(medians);
        }

        if (!RestHolds(medians) || medians.RhoHighRest is not { } high || medians.RhoRest is not { } rest || isShared)
        {
            return false;
        }

        bool signsFit = Math.Sign(rest) == Math.Sign(high) || Math.Abs(rest) <= NearZero;
        return Math.Abs(high) >= LeastHigh(medians, bands) && (Math.Abs(rest) >= BeyondTissue || (signsFit && Math.Abs(rest) <= 2 * Math.Abs(high)));
    }

    private static bool RestHolds(BridgeMedians medians) =>
        medians.RestSeconds >= LeastRestSeconds && Math.Abs(medians.ImaginaryRest ?? 0) <= MostImaginary;

    private static bool ActiveHolds(BridgeMedians medians) =>
        !medians.IsActiveShared && !RestDenies(medians) && Math.Abs(medians.ImaginaryActive ?? 0) <= MostImaginary;

    // What joins contractions joins rest as well; a remote muscle that two sites see is there only while it moves.
    private static bool RestDenies(BridgeMedians medians) => medians.RestSeconds >= LeastRestSeconds
        && Math.Abs(medians.RhoRest ?? 1) < NearZero && Math.Abs(medians.RhoHighRest ?? 0) < NearZero;
}
