using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Measures;

/// <summary>The readings of four single segments at once, one lane each; the same numbers as the plain measures give.</summary>
internal readonly ref struct LaneSpectra
{
    private readonly ReadOnlySpan<Vector256<double>> density;
    private readonly SpectralFrame frame;

    /// <summary>Looks at four densities.</summary>
    /// <param name="densities">One-sided densities, [bin x 4 + lane].</param>
    /// <param name="frame">The channel's frame.</param>
    public LaneSpectra(ReadOnlySpan<double> densities, SpectralFrame frame)
    {
        density = MemoryMarshal.Cast<double, Vector256<double>>(densities);
        this.frame = frame;
    }

    /// <summary>As <see cref="BandAmplitude"/>; 0 where line windows leave nothing.</summary>
    public Vector256<double> BandPower()
    {
        Vector256<double> sum = Vector256<double>.Zero;
        foreach (BinRange range in frame.OpenRanges)
        {
            sum = Sum(sum, range.From, range.To);
        }

        double scale = frame.OpenBins == 0 ? 0 : (double)(frame.LastBin - frame.FirstBin + 1) / frame.OpenBins;
        return sum * frame.BinHz * scale;
    }

    /// <summary>As <see cref="BandAmplitude"/> behind the scoring filter; 0 where line windows leave nothing.</summary>
    public Vector256<double> BandLeft()
    {
        Vector256<double> sum = Vector256<double>.Zero;
        foreach (BinRange range in frame.OpenRanges)
        {
            sum = SumLeft(sum, range.From, range.To);
        }

        double scale = frame.OpenBins == 0 ? 0 : (double)(frame.LastBin - frame.FirstBin + 1) / frame.OpenBins;
        return sum * frame.BinHz * scale;
    }

    /// <summary>Power between two bins behind the scoring filter.</summary>
    public Vector256<double> PowerLeft(BinRange range) => SumLeft(Vector256<double>.Zero, range.From, range.To) * frame.BinHz;

    /// <summary>Power between two bins.</summary>
    public Vector256<double> Power(BinRange range) => Sum(Vector256<double>.Zero, range.From, range.To) * frame.BinHz;

    /// <summary>Mean density of some bins; 0 when there are none.</summary>
    public Vector256<double> Mean(ImmutableArray<BinRange> ranges)
    {
        Vector256<double> sum = Vector256<double>.Zero;
        int count = 0;
        foreach (BinRange range in ranges)
        {
            sum = Sum(sum, range.From, range.To);
            count += range.Count;
        }

        return count == 0 ? sum : sum / count;
    }

    /// <summary>As <see cref="LineNoise"/> for one segment: power and the square of its standard error, raw and behind the scoring filter.</summary>
    public (Vector256<double> Power, Vector256<double> Variance, Vector256<double> PowerLeft, Vector256<double> VarianceLeft) Line()
    {
        Vector256<double> bias = Vector256.Create(PeakFloor.MedianBias(1));
        Vector256<double> power = Vector256<double>.Zero;
        Vector256<double> floorSquares = Vector256<double>.Zero;
        Vector256<double> powerLeft = Vector256<double>.Zero;
        Vector256<double> squaresLeft = Vector256<double>.Zero;
        foreach (LineWindow window in frame.Harmonics)
        {
            Vector256<double> floor = Floor(window.Center, bias);
            int last = Math.Min(density.Length - 1, window.Center + LineWindow.Reach);
            Vector256<double> sum = Sum(Vector256<double>.Zero, window.Center - LineWindow.Reach, last);
            power += Vector256.Max(Vector256<double>.Zero, sum - (floor * LineWindow.Width)) * frame.BinHz;
            floorSquares += floor * floor;
            Vector256<double> left = Vector256<double>.Zero;
            double squares = 0;
            for (int bin = window.Center - LineWindow.Reach; bin <= last; bin++)
            {
                left += (density[bin] - floor) * frame.Passes[bin];
                squares += frame.Passes[bin] * frame.Passes[bin];
            }

            powerLeft += Vector256.Max(Vector256<double>.Zero, left) * frame.BinHz;
            squaresLeft += floor * floor * squares;
        }

        double factor = PeakFloor.HannCorrelation * LineWindow.Width / Welch.EffectiveSegments(1) * frame.BinHz * frame.BinHz;
        return (power, floorSquares * factor, powerLeft, squaresLeft * (factor / LineWindow.Width));
    }

    /// <summary>Which lanes may hold a narrow peak that means anything in a single segment; only those are worth a closer look.</summary>
    /// <param name="leastPower">The least excess of five bins over the mean of the bins around them.</param>
    /// <remarks>
    /// The five bins must also hold 16 times that mean: 5 of their own and the 4 standard errors (4 x sqrt(1.5 x 5) = 11) without which a
    /// finding from so few segments does not count.
    /// </remarks>
    public Vector256<double> MayHoldNarrowPeak(Vector256<double> leastPower)
    {
        const double TimesFloor = 16;
        const double Around = 2 * (PeakFloor.Far - PeakFloor.Near + 1);
        Vector256<double> least = leastPower / frame.BinHz;
        Vector256<double> found = Vector256<double>.Zero;
        foreach (BinRange range in frame.NarrowCenters)
        {
            Vector256<double> wide = Wide(range.From);
            for (int bin = range.From; bin <= range.To; bin++)
            {
                Vector256<double> five = density[bin - 2] + density[bin - 1] + density[bin] + density[bin + 1] + density[bin + 2];
                Vector256<double> floor = Vector256.Max(Vector256<double>.Zero, wide - five) / Around;
                found |= Vector256.GreaterThanOrEqual(five, floor * TimesFloor)
                    & Vector256.GreaterThanOrEqual(five - (floor * LineWindow.Width), least);
                wide += Open(bin + PeakFloor.Far + 1) - Open(bin - PeakFloor.Far);
            }
        }

        return found;
    }

    private Vector256<double> Wide(int center)
    {
        Vector256<double> sum = Vector256<double>.Zero;
        for (int bin = center - PeakFloor.Far; bin <= center + PeakFloor.Far; bin++)
        {
            sum += Open(bin);
        }

        return sum;
    }

    /// <summary>A bin; nothing where a mains harmonic lies, which must not hide a peak beside it, or where there is no bin.</summary>
    private Vector256<double> Open(int bin) =>
        bin < 1 || bin >= density.Length || frame.IsLine[bin] ? Vector256<double>.Zero : density[bin];

    private Vector256<double> Floor(int center, Vector256<double> bias)
    {
        if (center - PeakFloor.Far < 1 || center + PeakFloor.Far >= density.Length)
        {
            return FloorAtEdge(center);
        }

        Span<Vector256<double>> around = stackalloc Vector256<double>[LaneMedian.Count];
        int count = 0;
        for (int offset = PeakFloor.Near; offset <= PeakFloor.Far; offset++)
        {
            around[count++] = density[center - offset];
            around[count++] = density[center + offset];
        }

        return LaneMedian.InPlace(around) / bias;
    }

    private Vector256<double> FloorAtEdge(int center)
    {
        Span<double> floors = stackalloc double[Vector256<double>.Count];
        double[] plain = new double[density.Length];
        for (int lane = 0; lane < floors.Length; lane++)
        {
            for (int bin = 0; bin < plain.Length; bin++)
            {
                plain[bin] = density[bin][lane];
            }

            floors[lane] = PeakFloor.At(plain, center, PeakFloor.MedianBias(1));
        }

        return Vector256.Create<double>(floors);
    }

    private Vector256<double> SumLeft(Vector256<double> start, int from, int to)
    {
        Vector256<double> sum = start;
        double[] passes = frame.Passes;
        for (int bin = from; bin <= to; bin++)
        {
            sum += density[bin] * passes[bin];
        }

        return sum;
    }

    private Vector256<double> Sum(Vector256<double> start, int from, int to)
    {
        Vector256<double> sum = start;
        for (int bin = from; bin <= to; bin++)
        {
            sum += density[bin];
        }

        return sum;
    }
}
