using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Measures;

namespace ChannelAudit.Calibration.Study;

/// <summary>All default limits made stricter or milder by one factor.</summary>
internal static class ScaledCriteria
{
    private const double MostCorrelation = 0.99;

    /// <summary>The defaults with every limit moved: above 1 milder, so that less is found.</summary>
    /// <param name="factor">On µV, %, ms and plain numbers; decibels move by 20 log10 of it.</param>
    public static AuditCriteria By(double factor) => DefaultCriteria.All with
    {
        All = [.. DefaultCriteria.All.All.Select(criterion => criterion with
        {
            Questionable = Scaled(criterion.Questionable, factor),
            Reject = Scaled(criterion.Reject, factor),
            ChannelQuestionable = Scaled(criterion.ChannelQuestionable, factor),
            ChannelReject = Scaled(criterion.ChannelReject, factor),
        })],
    };

    private static ImmutableArray<LimitSet> Scaled(ImmutableArray<LimitSet> sets, double factor) =>
        [.. sets.Select(set => new LimitSet([.. set.Limits.Select(limit => limit with { Value = Moved(limit, factor) })]))];

    private static double Moved(Limit limit, double factor)
    {
        MeasureDefinition measure = MeasureCatalog.Get(limit.Measure);
        double milder = measure.Sense == LimitSense.AtMost ? 1 / factor : factor;
        return measure.Unit switch
        {
            "dB" => limit.Value + (20 * Math.Log10(milder)),
            _ when limit.Measure.StartsWith("rho", StringComparison.Ordinal) => Math.Min(MostCorrelation, limit.Value * milder),
            _ => limit.Value * milder,
        };
    }
}
