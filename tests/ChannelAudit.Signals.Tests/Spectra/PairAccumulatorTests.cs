using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Signals.Tests.Spectra;

/// <summary>One pass over two spectra against the three passes that it stands for.</summary>
public sealed class PairAccumulatorTests
{
    private const int Length = 60;
    private const int FirstBin = 3;
    private const int Bins = 10;

    [Theory]
    [InlineData(15, 4)]
    [InlineData(5, 2)]
    [InlineData(8, 1)]
    public void TheSumsHaveTheBitsOfThoseOfTheSinglePasses(int mask, int counted)
    {
        var batch = Loaded();
        var pair = new PairAccumulator(FirstBin, Bins);
        var cross = new CrossAccumulator(FirstBin, Bins);
        var (powerA, powerB) = (new PowerAccumulator(batch.Bins), new PowerAccumulator(batch.Bins));
        for (var round = 0; round < 2; round++)
        {
            pair.Add(batch, 0, 1, mask);
            cross.Add(batch, 0, 1, mask);
            powerA.Add(batch, 0, mask);
            powerB.Add(batch, 1, mask);
        }

        var (re, im, densityA, densityB) = (new double[Bins], new double[Bins], new double[Bins], new double[Bins]);
        var (ofRe, ofIm) = (new double[Bins], new double[Bins]);
        var (ofA, ofB) = (new double[batch.Bins], new double[batch.Bins]);
        pair.Density(batch, re, im, densityA, densityB);
        cross.Density(batch, ofRe, ofIm);
        powerA.Density(batch, ofA);
        powerB.Density(batch, ofB);

        Assert.Equal(2 * counted, pair.Segments);
        Assert.Equal(ofRe, re);
        Assert.Equal(ofIm, im);
        Assert.Equal(ofA[FirstBin..(FirstBin + Bins)], densityA);
        Assert.Equal(ofB[FirstBin..(FirstBin + Bins)], densityB);
    }

    [Fact]
    public void MisuseIsRefused()
    {
        var batch = Loaded();
        var room = new double[2];

        Assert.Throws<ArgumentOutOfRangeException>(() => new PairAccumulator(-1, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PairAccumulator(0, 0));
        Assert.Throws<ArgumentException>(() => new PairAccumulator(30, 2).Add(batch, 0, 1));
        Assert.Throws<InvalidOperationException>(() => new PairAccumulator(0, 2).Density(batch, room, room, room, room));
    }

    private static SegmentBatch Loaded()
    {
        var batch = new SegmentBatch(100, Length, 2);
        batch.Load(0, NoiseOf.Seed(1, 4 * Length), Length, 4);
        batch.Load(1, NoiseOf.Seed(2, 4 * Length), Length, 4);
        return batch;
    }
}
