using BenchmarkDotNet.Attributes;
using ChannelAudit.Signals.Random;
using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Benchmarks.Kernels;

/// <summary>Four segments of 2000 samples on two channels: what a second of recording costs.</summary>
[MemoryDiagnoser]
public class Spectra
{
    private const int Length = 2000;
    private const int Hop = Length / 2;

    private readonly double[] samples = new double[Length + (3 * Hop)];
    private readonly double[] lanes = new double[Length * SegmentBatch.Lanes];
    private readonly SegmentBatch batch = new(Length, Length, 2);
    private readonly CrossAccumulator cross = new(30, 421);
    private readonly PowerAccumulator power = new((Length / 2) + 1);
    private readonly RealFft fft = RealFft.For(Length);
    private readonly double[] re = new double[((Length / 2) + 1) * SegmentBatch.Lanes];
    private readonly double[] im = new double[((Length / 2) + 1) * SegmentBatch.Lanes];

    /// <summary>Fills the samples.</summary>
    public Spectra()
    {
        Pcg32 random = new(1, 1);
        for (int i = 0; i < samples.Length; i++)
        {
            samples[i] = random.NextDouble() - 0.5;
        }

        for (int i = 0; i < lanes.Length; i++)
        {
            lanes[i] = random.NextDouble() - 0.5;
        }

        batch.Load(0, samples, Hop, SegmentBatch.Lanes);
        batch.Load(1, samples, Hop, SegmentBatch.Lanes);
    }

    /// <summary>The transforms alone.</summary>
    [Benchmark]
    public void FourTransforms() => fft.TransformFour(lanes, re, im);

    /// <summary>Mean, window and transforms.</summary>
    [Benchmark]
    public void FourSegmentsLoaded() => batch.Load(0, samples, Hop, SegmentBatch.Lanes);

    /// <summary>A channel's spectrum added up.</summary>
    [Benchmark]
    public void FourPowersAdded() => power.Add(batch, 0);

    /// <summary>A pair's cross-spectrum added up from 30 to 450 Hz.</summary>
    [Benchmark]
    public void FourCrossSpectraAdded() => cross.Add(batch, 0, 1);
}
