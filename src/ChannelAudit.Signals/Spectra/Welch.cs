using System.Globalization;

namespace ChannelAudit.Signals.Spectra;

/// <summary>Averaged periodograms of whole signals (Welch 1967): Hann, half overlap, mean removed from each segment.</summary>
/// <remarks>
/// The same conventions as SciPy's <c>welch</c>, <c>csd</c> and <c>coherence</c> with <c>window='hann'</c> (periodic),
/// <c>noverlap = nperseg//2</c>, <c>detrend='constant'</c>, <c>scaling='density'</c>, <c>average='mean'</c>. Samples that
/// do not fill a last segment are left out.
/// </remarks>
public static class Welch
{
    /// <summary>Squared correlation of the powers of Hann segments at half overlap, ρ² with ρ = 1/6.</summary>
    private const double HalfOverlapCorrelation = 1.0 / 36;

    /// <summary>Counts the segments that fit.</summary>
    /// <param name="samples">Number of samples.</param>
    /// <param name="segmentLength">Samples in a segment, at least 1.</param>
    /// <param name="hop">Samples from one start to the next, at least 1.</param>
    /// <returns>Number of whole segments, 0 when none fits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Segment length or hop is below 1.</exception>
    public static int SegmentCount(long samples, int segmentLength, int hop)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(segmentLength, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(hop, 1);
        return samples < segmentLength ? 0 : checked((int)(1 + ((samples - segmentLength) / hop)));
    }

    /// <summary>Gives the mean one-sided density of a signal.</summary>
    /// <param name="samples">At least one segment of samples; left as they are.</param>
    /// <param name="rateHz">Sampling rate in hertz, positive.</param>
    /// <param name="segmentLength">Samples in a segment, at least 2.</param>
    /// <returns>segmentLength/2 + 1 values in squared unit per hertz, rate/segmentLength apart.</returns>
    /// <exception cref="ArgumentException">The signal is shorter than a segment.</exception>
    public static double[] Density(ReadOnlySpan<double> samples, double rateHz, int segmentLength)
    {
        var batch = new SegmentBatch(rateHz, segmentLength, 1);
        var power = new PowerAccumulator(batch.Bins);
        foreach (var start in Batches(samples.Length, segmentLength))
        {
            Load(batch, 0, samples, start);
            power.Add(batch, 0);
        }

        var density = new double[batch.Bins];
        power.Density(batch, density);
        return density;
    }

    /// <summary>Gives the mean one-sided cross-density conj(A)·B of two signals.</summary>
    /// <param name="a">The conjugated signal, at least one segment long.</param>
    /// <param name="b">The other signal, of the same length.</param>
    /// <param name="rateHz">Sampling rate in hertz, positive.</param>
    /// <param name="segmentLength">Samples in a segment, at least 2.</param>
    /// <returns>Real and imaginary parts, segmentLength/2 + 1 each, in the product of the units per hertz.</returns>
    /// <exception cref="ArgumentException">The lengths differ or are below one segment.</exception>
    public static (double[] Re, double[] Im) Cross(
        ReadOnlySpan<double> a, ReadOnlySpan<double> b, double rateHz, int segmentLength)
    {
        Lengths.RequireExactly(b.Length, a.Length, nameof(b));
        var batch = new SegmentBatch(rateHz, segmentLength, 2);
        var cross = new CrossAccumulator(0, batch.Bins);
        foreach (var start in Batches(a.Length, segmentLength))
        {
            Load(batch, 0, a, start);
            Load(batch, 1, b, start);
            cross.Add(batch, 0, 1);
        }

        var (re, im) = (new double[batch.Bins], new double[batch.Bins]);
        cross.Density(batch, re, im);
        return (re, im);
    }

    /// <summary>Gives the magnitude-squared coherence of two signals.</summary>
    /// <param name="a">A signal of at least two segments.</param>
    /// <param name="b">Another of the same length.</param>
    /// <param name="rateHz">Sampling rate in hertz, positive.</param>
    /// <param name="segmentLength">Samples in a segment, at least 2.</param>
    /// <returns>segmentLength/2 + 1 values from 0 to 1; not a number in bins where a signal has no power at all.</returns>
    /// <exception cref="ArgumentException">The lengths differ, or there are fewer than two segments: with one the
    /// coherence is 1 by definition and says nothing.</exception>
    public static double[] Coherence(ReadOnlySpan<double> a, ReadOnlySpan<double> b, double rateHz, int segmentLength)
    {
        if (SegmentCount(a.Length, segmentLength, Hop(segmentLength)) < 2)
        {
            throw new ArgumentException("Coherence needs two segments: with one it is 1 by definition.", nameof(a));
        }

        var (re, im) = Cross(a, b, rateHz, segmentLength);
        var powerA = Density(a, rateHz, segmentLength);
        var powerB = Density(b, rateHz, segmentLength);
        var coherence = new double[re.Length];
        for (var bin = 0; bin < re.Length; bin++)
        {
            coherence[bin] = ((re[bin] * re[bin]) + (im[bin] * im[bin])) / (powerA[bin] * powerB[bin]);
        }

        return coherence;
    }

    /// <summary>Gives the number of independent segments worth as much as some half-overlapping Hann segments.</summary>
    /// <param name="segments">Number of segments K, at least 1.</param>
    /// <returns>L = K/(1 + 2·(K−1)/K·ρ²) with ρ = 1/6.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no segment.</exception>
    /// <remarks>Welch 1967, for the Hann window at half overlap.</remarks>
    public static double EffectiveSegments(int segments)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(segments, 1);
        return segments / (1 + (2.0 * (segments - 1) / segments * HalfOverlapCorrelation));
    }

    /// <summary>Gives the median of a density estimate over its mean, by which a median over bins is to be divided.</summary>
    /// <param name="effectiveSegments">Independent segments L, at least 1.</param>
    /// <returns>(1 − 1/(9L))³: the approximation of Wilson and Hilferty (1931) to the χ² median.</returns>
    /// <exception cref="ArgumentOutOfRangeException">L is below 1.</exception>
    public static double MedianBias(double effectiveSegments)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(effectiveSegments, 1);
        var root = 1 - (1 / (9 * effectiveSegments));
        return root * root * root;
    }

    /// <summary>Gives the coherence that unrelated signals exceed with a given probability.</summary>
    /// <param name="alpha">Probability, above 0 and below 1.</param>
    /// <param name="effectiveSegments">Independent segments L, above 1.</param>
    /// <returns>1 − α^(1/(L−1)).</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static double CoherencePoint(double alpha, double effectiveSegments)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(alpha, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(alpha, 1);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(effectiveSegments, 1);
        return 1 - Math.Pow(alpha, 1 / (effectiveSegments - 1));
    }

    private static int Hop(int segmentLength) => segmentLength - (segmentLength / 2);

    private static IEnumerable<(int First, int Count)> Batches(int samples, int segmentLength)
    {
        var total = SegmentCount(samples, segmentLength, Hop(segmentLength));
        if (total == 0)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"{samples} samples do not fill a segment of {segmentLength}."),
                nameof(samples));
        }

        return Enumerable.Range(0, (total + SegmentBatch.Lanes - 1) / SegmentBatch.Lanes)
            .Select(batch => (batch * SegmentBatch.Lanes, Math.Min(SegmentBatch.Lanes, total - (batch * SegmentBatch.Lanes))));
    }

    private static void Load(SegmentBatch batch, int channel, ReadOnlySpan<double> samples, (int First, int Count) part)
    {
        var hop = Hop(batch.SegmentLength);
        batch.Load(channel, samples[(part.First * hop)..], hop, part.Count);
    }
}
