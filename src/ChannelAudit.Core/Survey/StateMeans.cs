using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Survey;

/// <summary>Mean spectra of two channels over some of their segments.</summary>
internal sealed class StateMeans
{
    private readonly PairBands bands;
    private readonly int a;
    private readonly int b;
    private readonly int bins;
    private readonly bool[] wanted;
    private readonly PairAccumulator sums;

    /// <summary>Starts without segments.</summary>
    /// <param name="bands">The pair's bands.</param>
    /// <param name="a">The first channel's position in the batch.</param>
    /// <param name="b">The second channel's position.</param>
    /// <param name="bins">Bins of a spectrum.</param>
    /// <param name="segments">The segments that count, ascending.</param>
    /// <param name="total">Segments in the recording.</param>
    public StateMeans(PairBands bands, int a, int b, int bins, ImmutableArray<int> segments, int total)
    {
        this.bands = bands;
        this.a = a;
        this.b = b;
        this.bins = bins;
        wanted = new bool[total];
        foreach (int segment in segments)
        {
            wanted[segment] = true;
        }

        sums = new PairAccumulator(bands.FirstBin, Math.Max(1, bands.BinCount));
    }

    /// <summary>Adds those of the present segments that count.</summary>
    /// <param name="batch">The segments.</param>
    /// <param name="first">Number of the first of them.</param>
    public void Add(SegmentBatch batch, int first)
    {
        int mask = 0;
        for (int lane = 0; lane < batch.Segments; lane++)
        {
            mask |= wanted[first + lane] ? 1 << lane : 0;
        }

        if (mask != 0)
        {
            sums.Add(batch, a, b, mask);
        }
    }

    /// <summary>Whether any of some neighbouring segments counts.</summary>
    public bool Wants(int first, int count) => wanted.AsSpan(first, count).Contains(true);

    /// <summary>The reading; null without segments.</summary>
    public PairReading? Reading(SegmentBatch shape)
    {
        if (sums.Segments == 0)
        {
            return null;
        }

        (double[] re, double[] im, double[] densityA, double[] densityB) = Densities(shape);
        return PairReading.Of(bands, re, im, densityA, densityB, sums.Segments);
    }

    /// <summary>The coherence in steps of frequency; null without segments, and of a single one, where it is 1 by definition.</summary>
    public CoherenceSteps? Coherence(SegmentBatch shape)
    {
        if (sums.Segments < 2)
        {
            return null;
        }

        (double[] re, double[] im, double[] densityA, double[] densityB) = Densities(shape);
        return CoherenceSteps.Of(bands, re, im, densityA.AsSpan(bands.FirstBin), densityB.AsSpan(bands.FirstBin), sums.Segments);
    }

    private (double[] Re, double[] Im, double[] DensityA, double[] DensityB) Densities(SegmentBatch shape)
    {
        double[] re = new double[bands.BinCount];
        double[] im = new double[bands.BinCount];
        double[] densityA = new double[bins];
        double[] densityB = new double[bins];
        sums.Density(shape, re, im, densityA.AsSpan(bands.FirstBin), densityB.AsSpan(bands.FirstBin));
        return (re, im, densityA, densityB);
    }
}
