using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Measures;

/// <summary>Whether a high value of a high-passed stretch is a spike that can be a pop: short, alone, far above what is around it.</summary>
/// <remarks>
/// Engineering judgement throughout: 10 times the robust scale of the second around it, because quiet facial muscle is sparse, not Gaussian;
/// 10 ms wide at most at half its height; nothing between 5 and 25 ms beside it above half its height; 8 times the rms of what lies 10 to 100 ms
/// to either side, or it is the tallest spike of a burst.
/// </remarks>
internal readonly ref struct PopShape
{
    private const double TimesScale = 10;
    private const double TimesSide = 8;

    private readonly ReadOnlySpan<double> y;
    private readonly double rateHz;

    /// <summary>Looks at a stretch.</summary>
    /// <param name="highPassed">The stretch; where it begins or ends, the recording's unbroken stretch does, or no candidate is within a second.</param>
    /// <param name="rateHz">Samples per second.</param>
    public PopShape(ReadOnlySpan<double> highPassed, double rateHz)
    {
        y = highPassed;
        this.rateHz = rateHz;
    }

    /// <summary>Whether a sample is the top of such a spike.</summary>
    /// <param name="at">The sample.</param>
    /// <param name="leastHeight">The least height of a pop.</param>
    /// <param name="scale">Robust scale around it, where it is one.</param>
    public bool IsSpike(int at, double leastHeight, out double scale)
    {
        double height = Math.Abs(y[at]);
        scale = 0;
        return height >= leastHeight
            && IsLargest(at, height)
            && IsShort(at, height)
            && StandsAlone(at, height)
            && (scale = ScaleAround(at)) * TimesScale <= height;
    }

    private bool IsLargest(int at, double height)
    {
        int reach = Samples(10);
        for (int i = Math.Max(0, at - reach); i <= Math.Min(y.Length - 1, at + reach); i++)
        {
            double other = Math.Abs(y[i]);
            if (other > height || (other == height && i < at))
            {
                return false;
            }
        }

        return true;
    }

    private bool IsShort(int at, double height)
    {
        int from = at;
        int to = at;
        while (from > 0 && Math.Abs(y[from - 1]) >= height / 2)
        {
            from--;
        }

        while (to + 1 < y.Length && Math.Abs(y[to + 1]) >= height / 2)
        {
            to++;
        }

        return (to - from + 1) * 1000 / rateHz <= 10;
    }

    private bool StandsAlone(int at, double height)
    {
        int near = Samples(5);
        int far = Samples(25);
        for (int i = Math.Max(0, at - far); i <= Math.Min(y.Length - 1, at + far); i++)
        {
            if (Math.Abs(i - at) > near && Math.Abs(y[i]) > height / 2)
            {
                return false;
            }
        }

        return height >= TimesSide * Rms(at - Samples(100), at - Samples(10)) && height >= TimesSide * Rms(at + Samples(10), at + Samples(100));
    }

    private double Rms(int from, int to)
    {
        double sum = 0;
        int count = 0;
        for (int i = Math.Max(0, from); i <= Math.Min(y.Length - 1, to); i++, count++)
        {
            sum += y[i] * y[i];
        }

        return count == 0 ? 0 : Math.Sqrt(sum / count);
    }

    /// <summary>1.4826 x median of |y| over the second around, shifted inwards at the ends, without the 25 ms on either side.</summary>
    private double ScaleAround(int at)
    {
        int length = (int)Math.Min(y.Length, rateHz);
        int from = Math.Clamp(at - (length / 2), 0, y.Length - length);
        double[] sizes = new double[length];
        int count = 0;
        for (int i = from; i < from + length; i++)
        {
            if (Math.Abs(i - at) > Samples(25))
            {
                sizes[count++] = Math.Abs(y[i]);
            }
        }

        return count == 0 ? double.PositiveInfinity : RobustScale.Normal * Quantiles.MedianInPlace(sizes.AsSpan(0, count));
    }

    private int Samples(double ms) => (int)Math.Round(ms * rateHz / 1000);
}
