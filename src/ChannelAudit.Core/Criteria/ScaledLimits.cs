using System.Collections.Immutable;
using ChannelAudit.Measures;

namespace ChannelAudit.Criteria;

/// <summary>Limits moved so that they tolerate more or less fault: a factor of 2 always means twice as much, whatever the limit counts in.</summary>
/// <remarks>docs/sensitivity.md says for each kind of measure what that is, and which limits stay.</remarks>
public static class ScaledLimits
{
    private const double MostPercent = 100;

    /// <summary>All limits moved; the hash stays that of the limits as given.</summary>
    /// <param name="criteria">The limits.</param>
    /// <param name="factor">Above 1: more fault is tolerated; below 1: less. Above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">When the factor is not above 0.</exception>
    public static AuditCriteria Of(AuditCriteria criteria, double factor)
    {
        ArgumentNullException.ThrowIfNull(criteria);
        return criteria with { All = [.. criteria.All.Select(criterion => Of(criterion, factor))] };
    }

    /// <summary>The limits of one reason moved.</summary>
    /// <param name="criterion">The limits.</param>
    /// <param name="factor">As above.</param>
    public static Criterion Of(Criterion criterion, double factor)
    {
        foreach (CriterionLevel level in CriterionLevel.All)
        {
            criterion = level.With(criterion, [.. level.Get(criterion).Select(set => Of(set, factor))]);
        }

        return criterion;
    }

    /// <summary>One limit moved.</summary>
    /// <param name="measure">The measure that it is a limit of.</param>
    /// <param name="limit">The limit, in the measure's unit.</param>
    /// <param name="factor">As above.</param>
    public static double Of(MeasureDefinition measure, double limit, double factor)
    {
        ArgumentNullException.ThrowIfNull(measure);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(factor);

        // Where little is bad, twice as much fault is half of what should be there.
        double milder = measure.Sense == LimitSense.AtMost ? 1 / factor : factor;
        return measure.Scale switch
        {
            LimitScale.Size => limit * milder,
            LimitScale.Share => Math.Min(MostPercent, limit * milder),
            LimitScale.Decibels => limit + (20 * Math.Log10(milder)),
            LimitScale.Power => limit * milder * milder,
            LimitScale.Room => MostPercent * MovedPart(limit / MostPercent, milder),
            LimitScale.AboveNoise => Math.Sqrt(1 + (Math.Max(0, (limit * limit) - 1) * milder * milder)),
            LimitScale.Correlation => Math.CopySign(MovedPart(Math.Abs(limit), milder * milder), limit),
            LimitScale.Gain => Math.CopySign(MovedPart(Math.Abs(limit), milder), limit),
            _ => limit,
        };
    }

    private static LimitSet Of(LimitSet set, double factor) =>
        new([.. set.Limits.Select(limit => limit with { Value = Of(MeasureCatalog.Get(limit.Measure), limit.Value, factor) })]);

    // Of what is a part of a whole, what it stands in proportion to is the rest: 1 to 1 becomes 2 to 1.
    private static double MovedPart(double part, double factor) => part >= 1 ? part : part * factor / (1 - part + (part * factor));
}
