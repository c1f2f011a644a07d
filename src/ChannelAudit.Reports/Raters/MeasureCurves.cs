using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Results;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Raters;

/// <summary>Draws the curve of each measure that serves a reason.</summary>
internal static class MeasureCurves
{
    /// <summary>The curves, the largest area first, then in the order of the catalog; measures without a value at both kinds of label are left out.</summary>
    /// <param name="things">What people labelled.</param>
    public static ImmutableArray<MeasureAgainstPeople> Of(ImmutableArray<RatedThing> things) =>
    [
        .. MeasureCatalog.OfChannels
            .Where(measure => measure.Reason.Length > 0)
            .Select(measure => Of(measure, [.. things.Where(thing => thing.People is not null)]))
            .OfType<MeasureAgainstPeople>()
            .OrderByDescending(curve => Math.Round(curve.Area, 9)),
    ];

    private static MeasureAgainstPeople? Of(MeasureDefinition measure, RatedThing[] things)
    {
        (double Value, bool IsReject)[] known =
        [
            .. things.Select(thing => (Value: thing.Measures.ValueOf(measure.Name), IsReject: thing.People == Grade.Reject))
                .Where(one => one.Value is not null)
                .Select(one => (Suspicion(measure, one.Value!.Value), one.IsReject)),
        ];
        if (known.All(one => one.IsReject) || !known.Any(one => one.IsReject))
        {
            return null;
        }

        LimitCurve curve = LimitCurve.Of([.. known.Select(one => one.Value)], [.. known.Select(one => one.IsReject)]);
        double? limit = InForce(measure, things);
        LimitPoint best = curve.Best;
        MeasureAgainstPeople found = new()
        {
            Measure = measure,
            Points = [.. curve.Points.Select(point => (Back(measure, point.Limit), point.Counts))],
            Area = curve.Area,
            LeftOut = things.Length - known.Length,
            LimitInForce = limit,
            AtLimitInForce = limit is { } own ? Counted(known, Suspicion(measure, own)) : null,
        };
        return found with { Best = found.HasEnough && Back(measure, best.Limit) is { } bestLimit ? (bestLimit, best.Counts) : null };
    }

    // On this scale more is worse, whatever the measure's sense; the limit itself belongs to the bad side on both.
    private static double Suspicion(MeasureDefinition measure, double value) => measure.Sense switch
    {
        LimitSense.AtMost => -value,
        LimitSense.AtLeastMagnitude => Math.Abs(value),
        _ => value,
    };

    private static double? Back(MeasureDefinition measure, double limit) =>
        double.IsPositiveInfinity(limit) ? null : measure.Sense == LimitSense.AtMost ? -limit : limit;

    private static double? InForce(MeasureDefinition measure, RatedThing[] things) => things
        .SelectMany(thing => thing.Measures.Where(one => string.Equals(one.Value.Measure, measure.Name, StringComparison.Ordinal)))
        .Select(one => one.Reject)
        .FirstOrDefault(limit => limit is not null);

    private static DetectionCounts Counted((double Value, bool IsReject)[] known, double limit) => new(
        known.Count(one => one.IsReject && one.Value >= limit),
        known.Count(one => one.IsReject && one.Value < limit),
        known.Count(one => !one.IsReject && one.Value >= limit),
        known.Count(one => !one.IsReject && one.Value < limit));
}
