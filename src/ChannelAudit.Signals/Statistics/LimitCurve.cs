using System.Collections.Immutable;

namespace ChannelAudit.Signals.Statistics;

/// <summary>How well a number tells yes from no at every limit: sensitivity against 1 − specificity, and the area below.</summary>
/// <remarks>The area is the probability that a positive has the larger value, ties counted half: Mann and Whitney's U over the product of the
/// numbers (Bamber 1975), which is what trapezes under the curve add up to.</remarks>
public sealed class LimitCurve
{
    private LimitCurve(ImmutableArray<LimitPoint> points, double area) => (Points, Area) = (points, area);

    /// <summary>From a limit that calls nothing down to one that calls everything: one point a different value, and the first.</summary>
    public ImmutableArray<LimitPoint> Points { get; }

    /// <summary>0 to 1; 0.5 is no better than chance, 1 tells all of them apart.</summary>
    public double Area { get; }

    /// <summary>The point with the largest sensitivity + specificity − 1; of equally good ones that with the highest limit.</summary>
    public LimitPoint Best
    {
        get
        {
            var best = Points[0];
            foreach (var point in Points)
            {
                best = point.Counts.Youden > best.Counts.Youden ? point : best;
            }

            return best;
        }
    }

    /// <summary>Builds the curve.</summary>
    /// <param name="values">Finite values, larger the more they speak for yes; left as they are.</param>
    /// <param name="isPositive">The truth of each; at least one yes and one no.</param>
    /// <exception cref="ArgumentException">Lengths differ, or there are only positives or only negatives.</exception>
    public static LimitCurve Of(ReadOnlySpan<double> values, ReadOnlySpan<bool> isPositive)
    {
        Lengths.RequireExactly(isPositive.Length, values.Length, nameof(isPositive));
        var sorted = values.ToArray();
        var truth = isPositive.ToArray();
        Array.Sort(sorted, truth);
        var positives = truth.Count(one => one);
        var negatives = truth.Length - positives;
        if (positives == 0 || negatives == 0)
        {
            throw new ArgumentException("A curve needs a positive and a negative.", nameof(isPositive));
        }

        var points = ImmutableArray.CreateBuilder<LimitPoint>();
        points.Add(new LimitPoint(double.PositiveInfinity, new DetectionCounts(0, positives, 0, negatives)));
        var area = 0.0;
        for (var next = sorted.Length - 1; next >= 0;)
        {
            var (hits, alarms, limit) = (points[^1].Counts.Hits, points[^1].Counts.FalseAlarms, sorted[next]);
            var before = (Hits: hits, Alarms: alarms);
            for (; next >= 0 && sorted[next] == limit; next--)
            {
                hits += truth[next] ? 1 : 0;
                alarms += truth[next] ? 0 : 1;
            }

            area += (alarms - before.Alarms) * (hits + before.Hits) / 2.0;
            points.Add(new LimitPoint(limit, new DetectionCounts(hits, positives - hits, alarms, negatives - alarms)));
        }

        return new LimitCurve(points.ToImmutable(), area / ((double)positives * negatives));
    }
}
