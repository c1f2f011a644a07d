using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Signals.Tests.Spectra;

public sealed class SegmentBatchTests
{
    /// <summary>The definition: mean off, Hann window of MathNet.Numerics, direct transform, one-sided scale.</summary>
    [Theory]
    [InlineData(1, 200)]
    [InlineData(3, 200)]
    [InlineData(4, 200)]
    [InlineData(4, 97)]
    public void DensityAgreesWithTheDefinition(int segments, int length)
    {
        var hop = length / 2;
        var samples = NoiseOf.Seed(9, (segments * hop) + length, 5);
        var batch = new SegmentBatch(500, length, 2);

        batch.Load(1, samples, hop, segments);

        var density = new double[batch.Bins];
        for (var lane = 0; lane < segments; lane++)
        {
            batch.Density(1, lane, density);
            Near.All(Definition(samples.AsSpan(lane * hop, length).ToArray(), 500), density, 1E-9);
        }
    }

    [Fact]
    public void LanesWithoutASegmentAreZero()
    {
        var batch = new SegmentBatch(100, 50, 1);
        var densities = new double[4 * batch.Bins];
        batch.Load(0, NoiseOf.Seed(10, 125), 25, 4);
        batch.Load(0, NoiseOf.Seed(10, 75), 25, 2);

        batch.Densities(0, densities);

        Assert.Equal(2, batch.Segments);
        Assert.All(densities.Where((_, index) => index % 4 >= 2), value => Assert.Equal(0, value));
        Assert.All(densities.Where((_, index) => index % 4 < 2), value => Assert.True(value > 0));
    }

    [Theory]
    [InlineData(50)]
    [InlineData(51)]
    public void DensitiesAreTheDensitiesOfTheLanes(int length)
    {
        var batch = new SegmentBatch(100, length, 1);
        var densities = new double[4 * batch.Bins];
        var density = new double[batch.Bins];
        batch.Load(0, NoiseOf.Seed(10, 4 * length), length, 4);

        batch.Densities(0, densities);

        for (var lane = 0; lane < 4; lane++)
        {
            batch.Density(0, lane, density);
            double[] found = [.. densities.Where((_, index) => index % 4 == lane)];
            Assert.Equal(density, found);
        }
    }

    [Fact]
    public void MisuseIsRefused()
    {
        var batch = new SegmentBatch(100, 50, 1);

        Assert.Throws<ArgumentOutOfRangeException>(() => new SegmentBatch(0, 50, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SegmentBatch(double.NaN, 50, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SegmentBatch(100, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => batch.Load(1, new double[50], 25, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => batch.Load(0, new double[500], 25, 5));
        Assert.Throws<ArgumentException>(() => batch.Load(0, new double[74], 25, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => batch.Density(0, 0, new double[26]));
    }

    private static double[] Definition(double[] segment, double rateHz)
    {
        var window = MathNet.Numerics.Window.HannPeriodic(segment.Length);
        var mean = segment.Average();
        var density = new double[(segment.Length / 2) + 1];
        for (var k = 0; k < density.Length; k++)
        {
            double re = 0, im = 0;
            for (var n = 0; n < segment.Length; n++)
            {
                re += (segment[n] - mean) * window[n] * Math.Cos(2 * Math.PI * n * k / segment.Length);
                im -= (segment[n] - mean) * window[n] * Math.Sin(2 * Math.PI * n * k / segment.Length);
            }

            var sides = k == 0 || 2 * k == segment.Length ? 1 : 2;
            density[k] = sides * ((re * re) + (im * im)) / (rateHz * window.Sum(weight => weight * weight));
        }

        return density;
    }
}
