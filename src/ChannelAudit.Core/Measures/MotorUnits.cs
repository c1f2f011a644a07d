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
    private const double MostTimesKin = 2;

    /// <summary>How far from a spike others are looked at.</summary>
    public const double ReachSeconds = 0.5;

    private readonly ReadOnlySpan<double> y;
    private readonly double rateHz;
    private readonly int half;
    private readonly int shift;

    /// <summary>Looks at a high-passed stretch.</summary>
    public MotorUnits(ReadOnlySpan<double> highPassed, double rateHz)
    {
        y = highPassed;
        this.rateHz = rateHz;
        half = (int)Math.Round(0.005 * rateHz);
        shift = (int)Math.Round(0.004 * rateHz);
    }

    /// <summary>Whether the spike at a sample belongs to a train.</summary>
    /// <param name="at">The spike's top.</param>
    /// <param name="scale">Robust scale around it.</param>
    public bool Hold(int at, double scale)
    {
        List<double> likeness = [];
        List<double> heights = [];
        foreach (int i in Peaks(at, scale))
        {
            likeness.Add(Likeness(NearShape(at), NearShape(i)));
            heights.Add(Math.Abs(y[i]));
        }

        return likeness.Count >= LeastPeaks
            && Quantiles.Median(likeness.ToArray()) > LeastLikeness
            && Math.Abs(y[at]) <= MostTimesHeight * Quantiles.Median(heights.ToArray());
    }

    /// <summary>How many of the peaks around a spike could be the same unit's, and how many are alike but turned over.</summary>
    /// <param name="at">The spike's top.</param>
    /// <param name="scale">Robust scale around it.</param>
    public (int Alike, int Turned) Kin(int at, double scale)
    {
        int alike = 0;
        int turned = 0;
        foreach (int i in Peaks(at, scale))
        {
            int kin = KinOf(NearShape(at), Math.Abs(y[at]), WideShape(i), Math.Abs(y[i]));
            alike += kin > 0 ? 1 : 0;
            turned += kin < 0 ? 1 : 0;
        }

        return (alike, turned);
    }

    /// <summary>1 when two spikes are alike in shape, sign and height (half to twice), -1 when one is the other turned over, else 0.</summary>
    /// <param name="near">The 5 ms on either side of the one's top.</param>
    /// <param name="nearHeight">Its height.</param>
    /// <param name="wide">The 9 ms on either side of the other's top: of a potential with two phases of one height, now this and now that one is the top.</param>
    /// <param name="wideHeight">Its height.</param>
    public static int KinOf(ReadOnlySpan<double> near, double nearHeight, ReadOnlySpan<double> wide, double wideHeight)
    {
        if (near.IsEmpty || nearHeight > MostTimesKin * wideHeight || wideHeight > MostTimesKin * nearHeight)
        {
            return 0;
        }

        double best = 0;
        for (int offset = 0; offset + near.Length <= wide.Length; offset++)
        {
            double likeness = Likeness(near, wide.Slice(offset, near.Length));
            best = Math.Abs(likeness) > Math.Abs(best) ? likeness : best;
        }

        return Math.Abs(best) > LeastLikeness ? Math.Sign(best) : 0;
    }

    /// <summary>The 5 ms on either side of a sample; empty near the ends.</summary>
    public ReadOnlySpan<double> NearShape(int at) => ShapeAt(at, half);

    /// <summary>The 9 ms on either side of a sample; empty near the ends.</summary>
    public ReadOnlySpan<double> WideShape(int at) => ShapeAt(at, half + shift);

    private ReadOnlySpan<double> ShapeAt(int at, int reach) => at < reach || at + reach >= y.Length ? [] : y.Slice(at - reach, (2 * reach) + 1);

    /// <summary>Pearson's correlation of two shapes of one length; 0 when there are none.</summary>
    private static double Likeness(ReadOnlySpan<double> first, ReadOnlySpan<double> second)
    {
        if (first.Length != second.Length || first.IsEmpty)
        {
            return 0;
        }

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

    // The tops of 5 times the scale within half a second.
    private List<int> Peaks(int at, double scale)
    {
        List<int> peaks = [];
        int reach = (int)(ReachSeconds * rateHz);
        for (int i = Math.Max(half, at - reach); i <= Math.Min(y.Length - 1 - half, at + reach); i++)
        {
            if (i != at && Math.Abs(y[i]) >= TimesScale * scale && IsTop(i))
            {
                peaks.Add(i);
            }
        }

        return peaks;
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
}
