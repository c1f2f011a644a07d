using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Measures;

/// <summary>Whether a spike is one of a train of a single motor unit: several of them, alike in shape and sign, and this one not much taller.</summary>
/// <remarks>
/// Counted from 5 times the robust scale on: at 10 most of a train would be missed. Shapes are compared with their sign: without it, or with fewer
/// than four, real pops would pass as units. Engineering judgement.
/// </remarks>
internal readonly ref struct MotorUnits
{
    private const double TimesScale = 5;
    private const int LeastPeaks = 4;
    private const double LeastLikeness = 0.8;
    private const double MostTimesHeight = 3;
    private const double ReachSeconds = 0.5;

    private readonly ReadOnlySpan<double> y;
    private readonly double rateHz;
    private readonly int half;

    /// <summary>Looks at a high-passed stretch.</summary>
    public MotorUnits(ReadOnlySpan<double> highPassed, double rateHz)
    {
        y = highPassed;
        this.rateHz = rateHz;
        half = (int)Math.Round(0.005 * rateHz);
    }

    /// <summary>Whether the spike at a sample belongs to a train.</summary>
    /// <param name="at">The spike's top.</param>
    /// <param name="scale">Robust scale around it.</param>
    public bool Hold(int at, double scale)
    {
        List<double> likeness = [];
        List<double> heights = [];
        int reach = (int)(ReachSeconds * rateHz);
        for (int i = Math.Max(half, at - reach); i <= Math.Min(y.Length - 1 - half, at + reach); i++)
        {
            if (i != at && Math.Abs(y[i]) >= TimesScale * scale && IsTop(i))
            {
                likeness.Add(Likeness(at, i));
                heights.Add(Math.Abs(y[i]));
            }
        }

        return likeness.Count >= LeastPeaks
            && Quantiles.Median(likeness.ToArray()) > LeastLikeness
            && Math.Abs(y[at]) <= MostTimesHeight * Quantiles.Median(heights.ToArray());
    }

    private bool IsTop(int at)
    {
        double height = Math.Abs(y[at]);
        for (int i = at - half; i <= at + half; i++)
        {
            if (Math.Abs(y[i]) > height || (Math.Abs(y[i]) == height && i < at))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Pearson's correlation of the 5 ms on either side of two samples; 0 near the ends.</summary>
    private double Likeness(int a, int b)
    {
        if (a < half || a + half >= y.Length)
        {
            return 0;
        }

        ReadOnlySpan<double> first = y.Slice(a - half, (2 * half) + 1);
        ReadOnlySpan<double> second = y.Slice(b - half, (2 * half) + 1);
        (double meanFirst, double meanSecond) = (LaneMean.Of(first), LaneMean.Of(second));
        double both = 0, squaresFirst = 0, squaresSecond = 0;
        for (int i = 0; i < first.Length; i++)
        {
            (double u, double v) = (first[i] - meanFirst, second[i] - meanSecond);
            both += u * v;
            squaresFirst += u * u;
            squaresSecond += v * v;
        }

        return squaresFirst > 0 && squaresSecond > 0 ? both / Math.Sqrt(squaresFirst * squaresSecond) : 0;
    }
}
