using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Signals.Tests.Spectra;

/// <summary>Both accumulators against means over the single segments, written out.</summary>
public sealed class AccumulatorTests
{
    private const int Length = 60;

    [Theory]
    [InlineData(15, 4)]
    [InlineData(5, 2)]
    [InlineData(8, 1)]
    public void OnlyTheLanesOfTheMaskCount(int mask, int counted)
    {
        var batch = Loaded(4);
        var power = new PowerAccumulator(batch.Bins);
        var density = new double[batch.Bins];

        power.Add(batch, 0, mask);
        power.Density(batch, density);

        Assert.Equal(counted, power.Segments);
        Near.All(MeanOfLanes(batch, 0, mask), density, 1E-13);
    }

    [Fact]
    public void LanesThatWereNotLoadedNeverCount()
    {
        var batch = Loaded(3);
        var power = new PowerAccumulator(batch.Bins);
        var cross = new CrossAccumulator(0, 2);

        power.Add(batch, 0);
        cross.Add(batch, 0, 1);

        Assert.Equal(3, power.Segments);
        Assert.Equal(3, cross.Segments);
    }

    [Fact]
    public void BrokenSegmentOutsideTheMaskLeavesNoTrace()
    {
        var samples = NoiseOf.Seed(1, 4 * Length);
        samples[(2 * Length) + 5] = double.NaN;
        var batch = new SegmentBatch(100, Length, 1);
        var power = new PowerAccumulator(batch.Bins);
        var density = new double[batch.Bins];

        batch.Load(0, samples, Length, 4);
        power.Add(batch, 0, 11);
        power.Density(batch, density);

        Assert.All(density, value => Assert.True(double.IsFinite(value)));
    }

    [Fact]
    public void CrossOfAChannelWithItselfIsItsPower()
    {
        var batch = Loaded(4);
        var power = new PowerAccumulator(batch.Bins);
        var cross = new CrossAccumulator(3, 10);
        var (density, re, im) = (new double[batch.Bins], new double[10], new double[10]);

        power.Add(batch, 1);
        cross.Add(batch, 1, 1);
        power.Density(batch, density);
        cross.Density(batch, re, im);

        Assert.Equal(density[3..13], re);
        Assert.All(im, value => Assert.Equal(0, value));
    }

    /// <summary>B is A two samples later: the phase of conj(A)·B is −2π·f·delay (shift theorem; SciPy's csd has the same
    /// sign).</summary>
    [Fact]
    public void DelayTurnsThePhaseBackwards()
    {
        var noise = NoiseOf.Seed(3, 4002);
        var (re, im) = Welch.Cross(noise.AsSpan(2, 4000), noise.AsSpan(0, 4000), 1000, 200);

        for (var bin = 2; bin < 40; bin++)
        {
            Near.Within(0.12, -2 * Math.PI * bin * 5 * 0.002, Math.Atan2(im[bin], re[bin]));
        }
    }

    [Fact]
    public void ResetForgetsEverything()
    {
        var batch = Loaded(4);
        var power = new PowerAccumulator(batch.Bins);
        var cross = new CrossAccumulator(0, batch.Bins);
        var (once, again) = (new double[batch.Bins], new double[batch.Bins]);
        var (onceRe, onceIm) = (new double[batch.Bins], new double[batch.Bins]);
        var (againRe, againIm) = (new double[batch.Bins], new double[batch.Bins]);
        power.Add(batch, 0);
        cross.Add(batch, 0, 1);
        power.Density(batch, once);
        cross.Density(batch, onceRe, onceIm);

        power.Reset();
        cross.Reset();
        power.Add(batch, 0);
        cross.Add(batch, 0, 1);
        power.Density(batch, again);
        cross.Density(batch, againRe, againIm);

        Assert.Equal(once, again);
        Assert.Equal(onceRe, againRe);
        Assert.Equal(onceIm, againIm);
    }

    [Fact]
    public void MisuseIsRefused()
    {
        var batch = Loaded(4);

        Assert.Throws<ArgumentOutOfRangeException>(() => new PowerAccumulator(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new CrossAccumulator(-1, 2));
        Assert.Throws<ArgumentException>(() => new PowerAccumulator(5).Add(batch, 0));
        Assert.Throws<ArgumentException>(() => new CrossAccumulator(30, 2).Add(batch, 0, 1));
        Assert.Throws<InvalidOperationException>(() => new PowerAccumulator(batch.Bins).Density(batch, new double[batch.Bins]));
        Assert.Throws<InvalidOperationException>(() => new CrossAccumulator(0, 2).Density(batch, new double[2], new double[2]));
    }

    private static SegmentBatch Loaded(int segments)
    {
        var batch = new SegmentBatch(100, Length, 2);
        batch.Load(0, NoiseOf.Seed(1, 4 * Length), Length, segments);
        batch.Load(1, NoiseOf.Seed(2, 4 * Length), Length, segments);
        return batch;
    }

    private static double[] MeanOfLanes(SegmentBatch batch, int channel, int mask)
    {
        int[] lanes = [.. Enumerable.Range(0, 4).Where(lane => (mask & (1 << lane)) != 0)];
        var mean = new double[batch.Bins];
        var density = new double[batch.Bins];
        foreach (var lane in lanes)
        {
            batch.Density(channel, lane, density);
            mean = [.. mean.Zip(density, (sum, value) => sum + (value / lanes.Length))];
        }

        return mean;
    }
}
