using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Trends;

namespace ChannelAudit.Reports.Trends;

/// <summary>One measure of one subject over all time or in one week.</summary>
/// <param name="Subject">The subject.</param>
/// <param name="Week">Monday of the week; null: over all time.</param>
/// <param name="Measure">The word for the measure.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Sessions">Recordings that have a value.</param>
/// <param name="Values">Values.</param>
/// <param name="Value">Of a share the share, else the median; of bridges a session the mean.</param>
/// <param name="Low">Of a share the lower end of its 95 % interval after Wilson, else the lower quartile.</param>
/// <param name="High">The upper end, or the upper quartile.</param>
public sealed record TrendRow(TrendSubject Subject, DateOnly? Week, string Measure, string Unit, int Sessions, int Values, double Value, double? Low, double? High)
{
    /// <summary>The word for pairs of joined channels a recording.</summary>
    public const string BridgesASession = "bridges";

    /// <summary>The week as ISO 8601 writes it, or <c>all</c>.</summary>
    public string Period => Week is { } monday
        ? string.Create(CultureInfo.InvariantCulture, $"{ISOWeek.GetYear(monday.ToDateTime(TimeOnly.MinValue)):D4}-W{ISOWeek.GetWeekOfYear(monday.ToDateTime(TimeOnly.MinValue)):D2}")
        : TrendSubjects.All;

    /// <summary>All rows: by subject, over all time and then by week, by measure.</summary>
    public static IEnumerable<TrendRow> All(TrendReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        (TrendMeasure Measure, ImmutableArray<TrendValue> Values)[] measures = [.. TrendMeasure.All.Select(measure => (measure, TrendValue.Of(report.Sessions, measure)))];
        foreach (TrendSubject subject in report.Subjects)
        {
            (TrendMeasure Measure, TrendValue[] Values)[] own = [.. measures.Select(one => (one.Measure, one.Values.Where(value => value.IsOf(subject)).ToArray()))];
            foreach (int? week in own.SelectMany(one => one.Values).Select(value => (int?)value.Week).Distinct().Order().Prepend(null))
            {
                foreach (TrendRow row in Of(report, subject, own, week))
                {
                    yield return row;
                }
            }
        }
    }

    /// <summary>A row of some values.</summary>
    public static TrendRow Of(TrendSubject subject, DateOnly? week, TrendMeasure measure, IReadOnlyList<TrendValue> values)
    {
        double[] raw = [.. values.Select(value => value.Raw)];
        int sessions = values.Select(value => value.Session).Distinct().Count();
        if (measure.Scale == TrendScale.Share)
        {
            int count = raw.Count(value => value > 0);
            (double low, double high) = WilsonInterval.Of(count, raw.Length);
            return new TrendRow(subject, week, measure.Code, measure.Unit, sessions, raw.Length, (double)count / raw.Length, low, high);
        }

        double lower = Quantiles.Type7InPlace(raw, 0.25);
        double upper = Quantiles.Type7InPlace(raw, 0.75);
        return new TrendRow(subject, week, measure.Code, measure.Unit, sessions, raw.Length, Quantiles.MedianInPlace(raw), lower, upper);
    }

    private static IEnumerable<TrendRow> Of(TrendReport report, TrendSubject subject, (TrendMeasure Measure, TrendValue[] Values)[] measures, int? week)
    {
        DateOnly? monday = week is { } number ? DateOnly.FromDayNumber(7 * number) : null;
        foreach ((TrendMeasure measure, TrendValue[] all) in measures)
        {
            TrendValue[] values = week is null ? all : [.. all.Where(value => value.Week == week)];
            if (values.Length > 0)
            {
                yield return Of(subject, monday, measure, values);
            }

            // Pairs lie between sites: they are counted where whole recordings are.
            if (measure == TrendMeasure.Bridge && values.Length > 0 && subject.By <= TrendBy.Amplifier)
            {
                int[] sessions = [.. values.Select(value => value.Session).Distinct()];
                yield return new TrendRow(
                    subject, monday, BridgesASession, "1", sessions.Length, sessions.Length, sessions.Average(session => report.Sessions[session].BridgedPairs), null, null);
            }
        }
    }
}
