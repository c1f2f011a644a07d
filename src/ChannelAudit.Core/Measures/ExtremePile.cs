namespace ChannelAudit.Measures;

/// <summary>How samples pile up at a channel's highest values: tells a hidden rail from the peak of a wave.</summary>
/// <remarks>
/// A rail is hidden in the data when at least 6 samples lie within one step of the extreme, at least 4 times as many as in the next 4 steps,
/// and it is held for 2 samples somewhere but not for half the recording. An analogue peak thins out towards its extreme, a rail piles up.
/// For the lower side feed the samples with the sign turned.
/// </remarks>
public sealed class ExtremePile
{
    private const int Steps = 6;
    private const int LeastAtRail = 6;
    private const int TimesAsMany = 4;

    private readonly double step;
    private readonly long[] counts = new long[Steps];
    private readonly long[] pairs = new long[Steps];
    private double previous = double.NegativeInfinity;

    /// <summary>Starts an empty pile.</summary>
    /// <param name="step">The smallest step between two values; with 0 nothing is ever found.</param>
    public ExtremePile(double step) => this.step = step;

    /// <summary>The smallest step between two values.</summary>
    public double Step => step;

    /// <summary>The highest value so far.</summary>
    public double Extreme { get; private set; } = double.NegativeInfinity;

    /// <summary>Values below this cannot matter any more, whatever follows.</summary>
    public double Floor => Extreme - ((Steps - 0.5) * step);

    /// <summary>Adds consecutive samples.</summary>
    /// <param name="samples">The samples.</param>
    /// <param name="sign">1, or -1 to look at the lower side.</param>
    public void Add(ReadOnlySpan<double> samples, double sign)
    {
        foreach (double sample in samples)
        {
            double value = sign * sample;
            if (value >= Floor)
            {
                Count(value);
            }

            previous = value;
        }
    }

    /// <summary>Takes note of samples that were skipped because all lie below <see cref="Floor"/>, or of a gap.</summary>
    public void Break() => previous = double.NegativeInfinity;

    /// <summary>Whether the samples pile up as they do at a rail.</summary>
    /// <param name="samples">Samples in the whole recording.</param>
    public bool IsRail(long samples)
    {
        long atRail = counts[0] + counts[1];
        long below = counts[2] + counts[3] + counts[4] + counts[5];
        bool held = pairs[0] + pairs[1] > 0;
        return step > 0 && atRail >= LeastAtRail && atRail >= TimesAsMany * below && held && atRail * 2 < samples;
    }

    private void Count(double value)
    {
        if (value > Extreme)
        {
            Shift(double.IsNegativeInfinity(Extreme) || step <= 0 ? Steps : (value - Extreme) / step);
            Extreme = value;
        }

        if (step <= 0)
        {
            return;
        }

        int depth = (int)Math.Round((Extreme - value) / step);
        if (depth < Steps)
        {
            counts[depth]++;
            double pairDepth = Math.Round((Extreme - Math.Min(previous, value)) / step);
            if (pairDepth < Steps)
            {
                pairs[(int)pairDepth]++;
            }
        }
    }

    private void Shift(double steps)
    {
        int by = (int)Math.Min(Steps, Math.Round(steps));
        for (int depth = Steps - 1; depth >= 0; depth--)
        {
            counts[depth] = depth >= by ? counts[depth - by] : 0;
            pairs[depth] = depth >= by ? pairs[depth - by] : 0;
        }
    }
}
