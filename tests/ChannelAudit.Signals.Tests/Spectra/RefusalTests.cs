using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Signals.Tests.Spectra;

/// <summary>What does not fit is refused before memory is touched that belongs to others: the vector code reads and writes without bounds.</summary>
public sealed class RefusalTests
{
    private const int Length = 60;
    private const int Bins = 31;
    private static readonly double[] Room = new double[Bins];
    private static readonly double[] Small = new double[Bins - 1];

    [Fact]
    public void ASegmentsDensityNeedsItsRoom()
    {
        var batch = Loaded();

        Assert.Equal(100.0 / Length, batch.BinHz);
        Assert.Throws<ArgumentException>(() => batch.Density(0, 0, Small));
        Assert.Throws<ArgumentException>(() => batch.Densities(0, new double[(4 * Bins) - 1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => batch.Density(0, -1, Room));
        Assert.Throws<ArgumentOutOfRangeException>(() => batch.Density(-1, 0, Room));
        Assert.Throws<ArgumentOutOfRangeException>(() => batch.Density(2, 0, Room));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SegmentBatch(100, Length, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => batch.Load(0, new double[500], 0, 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => batch.Load(0, new double[500], 25, 0));
        Assert.Throws<OverflowException>(() => batch.Load(0, new double[500], int.MaxValue, 4));
    }

    [Fact]
    public void AMeanNeedsItsShapeAndItsRoom()
    {
        var batch = Loaded();
        SegmentBatch shorter = new(100, Length - 2, 1);
        PowerAccumulator power = new(Bins);
        CrossAccumulator cross = new(0, Bins);
        PairAccumulator pair = new(0, Bins);
        power.Add(batch, 0);
        cross.Add(batch, 0, 1);
        pair.Add(batch, 0, 1);

        Assert.Throws<ArgumentException>(() => power.Add(shorter, 0));
        Assert.Throws<ArgumentException>(() => power.Density(shorter, Room));
        Assert.Throws<ArgumentException>(() => power.Density(batch, Small));
        Assert.Throws<ArgumentException>(() => cross.Density(shorter, Room, Room));
        Assert.Throws<ArgumentException>(() => cross.Density(batch, Small, Room));
        Assert.Throws<ArgumentException>(() => cross.Density(batch, Room, Small));
        Assert.Throws<ArgumentOutOfRangeException>(() => new CrossAccumulator(0, 0));
        Assert.Throws<ArgumentException>(() => pair.Density(shorter, Room, Room, Room, Room));
        Assert.Throws<ArgumentException>(() => pair.Density(batch, Small, Room, Room, Room));
        Assert.Throws<ArgumentException>(() => pair.Density(batch, Room, Small, Room, Room));
        Assert.Throws<ArgumentException>(() => pair.Density(batch, Room, Room, Small, Room));
        Assert.Throws<ArgumentException>(() => pair.Density(batch, Room, Room, Room, Small));
    }

    // A range from bin 29 on fits no spectrum of 30 bins, however small it is.
    [Fact]
    public void ARangeMustLieInTheSpectrum()
    {
        var batch = Loaded();
        SegmentBatch shorter = new(100, Length - 2, 1);
        CrossAccumulator cross = new(29, 2);
        PairAccumulator pair = new(29, 2);
        cross.Add(batch, 0, 1);
        pair.Add(batch, 0, 1);

        Assert.Throws<ArgumentException>(() => cross.Density(shorter, Room, Room));
        Assert.Throws<ArgumentException>(() => pair.Density(shorter, Room, Room, Room, Room));
    }

    [Theory]
    [InlineData(Length)]
    [InlineData(61)]
    public void ATransformNeedsItsRoom(int length)
    {
        var fft = RealFft.For(length);
        var four = new double[4 * length];

        Assert.Throws<ArgumentException>(() => fft.Transform(new double[length - 1], Room, Room));
        Assert.Throws<ArgumentException>(() => fft.Transform(new double[length], Small, Room));
        Assert.Throws<ArgumentException>(() => fft.Transform(new double[length], Room, Small));
        Assert.Throws<ArgumentException>(() => fft.TransformFour(new double[(4 * length) - 4], new double[4 * Bins], new double[4 * Bins]));
        Assert.Throws<ArgumentException>(() => fft.TransformFour(four, new double[(4 * Bins) - 4], new double[4 * Bins]));
        Assert.Throws<ArgumentException>(() => fft.TransformFour(four, new double[4 * Bins], new double[(4 * Bins) - 4]));
        Assert.Throws<ArgumentOutOfRangeException>(() => RealFft.For(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => RealFft.For((1 << 26) + 1));
    }

    [Fact]
    public void NumbersOutsideTheirRangeHaveNoAnswer()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Welch.SegmentCount(100, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Welch.SegmentCount(100, 10, 0));
        Assert.Throws<OverflowException>(() => Welch.SegmentCount(long.MaxValue, 1, 1));
        Assert.Throws<ArgumentException>(() => Welch.Cross(new double[100], new double[99], 100, 50));
        Assert.Throws<ArgumentException>(() => Welch.Coherence(new double[74], new double[74], 100, 50));
        Assert.Equal(26, Welch.Coherence(NoiseOf.Seed(1, 75), NoiseOf.Seed(2, 75), 100, 50).Length);
        Assert.Throws<ArgumentOutOfRangeException>(() => Welch.EffectiveSegments(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Welch.MedianBias(0.9));
        Assert.Throws<ArgumentOutOfRangeException>(() => Welch.CoherencePoint(0, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => Welch.CoherencePoint(1, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => Welch.CoherencePoint(0.05, 1));
    }

    private static SegmentBatch Loaded()
    {
        var batch = new SegmentBatch(100, Length, 2);
        batch.Load(0, NoiseOf.Seed(1, 4 * Length), Length, 4);
        batch.Load(1, NoiseOf.Seed(2, 4 * Length), Length, 4);
        return batch;
    }
}
