using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Measures;

namespace ChannelAudit.Criteria;

/// <summary>Limits as they are asked of what a scoring filter leaves: the same numbers, of the surviving measures.</summary>
/// <remarks>
/// Line, narrow peaks and low frequencies: amplitude against amplitude, ratio against ratio. Slope and range of the baseline are not asked at all behind a
/// high-pass of order 2 and more at 2 Hz and more. Headroom and clipping stay: an overdriven amplifier cannot be filtered back.
/// </remarks>
public static class ScoredCriteria
{
    private static readonly ImmutableDictionary<string, string> Surviving = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["line_rms"] = "line_left",
        ["line_ratio"] = "line_left_ratio",
        ["narrow_rms"] = "narrow_left",
        ["narrow_ratio"] = "narrow_left_ratio",
        ["lowfreq_rms"] = "lowfreq_left",
        ["lowfreq_ratio"] = "lowfreq_left_ratio",
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <summary>The limits in force behind a filter; their hash stays that of the limits as given.</summary>
    /// <param name="criteria">The limits as given.</param>
    /// <param name="filter">The filter.</param>
    public static AuditCriteria Of(AuditCriteria criteria, ScoringFilter filter) =>
        criteria with { All = [.. criteria.All.Select(criterion => Of(criterion, filter))] };

    private static Criterion Of(Criterion criterion, ScoringFilter filter)
    {
        foreach (CriterionLevel level in CriterionLevel.All)
        {
            criterion = level.With(criterion, [.. level.Get(criterion).Where(set => !IsTaken(criterion.Reason, set, filter)).Select(Of)]);
        }

        return criterion;
    }

    // An alternative that asks for drift and something else can no longer be reached as a whole.
    private static bool IsTaken(string reason, LimitSet set, ScoringFilter filter) =>
        filter.TakesDrift && string.Equals(reason, ReasonCode.Drift, StringComparison.Ordinal)
        && set.Limits.Any(limit => limit.Measure is "drift_slope" or "drift_range");

    private static LimitSet Of(LimitSet set) =>
        new([.. set.Limits.Select(limit => limit with { Measure = Surviving.GetValueOrDefault(limit.Measure, limit.Measure) })]);
}
