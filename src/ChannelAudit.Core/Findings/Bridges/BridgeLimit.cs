using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Bridges;

/// <summary>A limit of a median, as it holds for a pair.</summary>
/// <param name="Measure">The median: <c>rho_rest</c>, <c>rho_high_rest</c>, <c>rho_active</c> or <c>gain_active</c>.</param>
/// <param name="Grade">What reaching it, together with the others of its set, makes of the pair.</param>
/// <param name="Value">The limit, in size.</param>
public sealed record BridgeLimit(string Measure, Grade Grade, double Value)
{
    /// <summary>The limits of a pair: with the high band those of the sets that use it, without it of those that do not.</summary>
    /// <param name="criterion">The limits in force.</param>
    /// <param name="bands">The pair's bands.</param>
    /// <param name="leastHigh">What the correlation above 300 Hz must reach to be more than chance.</param>
    public static ImmutableArray<BridgeLimit> Of(Criterion criterion, PairBands bands, double leastHigh) =>
    [
        .. Of(criterion.Questionable, Grade.Questionable, bands).Concat(Of(criterion.Reject, Grade.Reject, bands)).Select(limit =>
            string.Equals(limit.Measure, "rho_high_rest", StringComparison.Ordinal) ? limit with { Value = Math.Max(limit.Value, leastHigh) } : limit),
    ];

    private static IEnumerable<BridgeLimit> Of(ImmutableArray<LimitSet> sets, Grade grade, PairBands bands) => sets
        .Where(set => bands.HasHigh || !Uses(set, "rho_high_rest"))
        .Where(set => !bands.HasHigh || !Uses(set, "rho_rest") || Uses(set, "rho_high_rest"))
        .SelectMany(set => set.Limits)
        .GroupBy(limit => limit.Measure, StringComparer.Ordinal)
        .Select(group => new BridgeLimit(group.Key, grade, group.Min(limit => limit.Value)));

    private static bool Uses(LimitSet set, string measure) => set.Limits.Any(limit => string.Equals(limit.Measure, measure, StringComparison.Ordinal));
}
