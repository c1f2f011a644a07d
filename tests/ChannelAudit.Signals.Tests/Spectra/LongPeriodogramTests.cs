using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Signals.Tests.Spectra;

public sealed class LongPeriodogramTests
{
    /// <summary>Our own transform with the same conventions, itself held to SciPy.</summary>
    [Fact]
    public void DensityIsThatOfOneSegment()
    {
        var samples = NoiseOf.Seed(30, 4096, 3);

        Near.All(Welch.Density(samples, 2000, 4096), LongPeriodogram.Density(samples, 2000), 1E-9);
    }

    /// <summary>The frequency put in, at all places between two bins of 0.061 Hz.</summary>
    [Theory]
    [InlineData(49.95)]
    [InlineData(50)]
    [InlineData(50.02)]
    [InlineData(50.04)]
    [InlineData(60.013)]
    public void MainsFrequencyIsFoundBetweenBins(double hertz)
    {
        var samples = NoiseOf.Seed(31, 32_768, 0.5);
        for (var n = 0; n < samples.Length; n++)
        {
            samples[n] += 3 * Math.Sin((2 * Math.PI * hertz * n / 2000) + 0.4);
        }

        var density = LongPeriodogram.Density(samples, 2000);

        Near.Within(0.02 * 2000 / 32_768, hertz, LongPeriodogram.PeakHz(density, 2000.0 / 32_768, 0.98 * hertz, 1.02 * hertz));
        Assert.True(LongPeriodogram.PeakProminence(density, 2000.0 / 32_768, 0.98 * hertz, 1.02 * hertz) > 1000);
    }

    /// <summary>By hand: the neighbours 3 to 10 bins away are 1 to 16, median 8.5.</summary>
    [Fact]
    public void ProminenceComparesWithTheMedianOfTheNeighbours()
    {
        var density = new double[41];
        density[20] = 85;
        density[19] = density[21] = density[18] = density[22] = 80;
        for (var distance = 3; distance <= 10; distance++)
        {
            density[20 - distance] = distance - 2;
            density[20 + distance] = distance + 6;
        }

        Near.One(10, LongPeriodogram.PeakProminence(density, 1, 15, 25), 1E-14);
    }

    /// <summary>By hand: on logarithms 0, 1, 0.5 the parabola's top is at (0 − 0.5)/(2·(0 − 2 + 0.5)) = 1/6.</summary>
    // Near the ends only what is there counts: of 1 to 12, bins 3 to 10 lie 3 to 10 away from bin 0, and bins 1 to 8 from bin 11; of bin 5 three on one side and four on the other.
    [Theory]
    [InlineData(0, 7.5)]
    [InlineData(11, 5.5)]
    [InlineData(5, 9)]
    public void AtTheEndsNeighboursAreOfOneSide(int peak, double median)
    {
        double[] density = [.. Enumerable.Range(0, 12).Select(bin => bin + 1.0)];
        density[peak] = 1000;

        Near.One(1000 / median, LongPeriodogram.PeakProminence(density, 0.5, 0.5 * peak, 0.5 * peak), 1E-14);
    }

    [Theory]
    [InlineData(1.1, 2.9, 2)]
    [InlineData(1, 3.5, 3)]
    [InlineData(-5, 70, 5.5)]
    public void TheStrongestIsSoughtInTheRange(double fromHz, double toHz, double hertz)
    {
        double[] density = [1, 1, 2, 3, 4, 1, 9, 8, 1, 1, 1, 20];

        Assert.Equal(hertz, LongPeriodogram.PeakHz(density, 0.5, fromHz, toHz), 0.26);
    }

    [Fact]
    public void PeakIsTheTopOfTheParabola()
    {
        double[] density = [1E-9, 1, Math.E, Math.Exp(0.5), 1E-9];

        Near.One(2 * (2 + (1 / 6.0)), LongPeriodogram.PeakHz(density, 2, 0, 8), 1E-12);
    }

    [Fact]
    public void PeaksAtTheEndAndEmptyNeighbourhoodsAreTakenAsTheyAre()
    {
        Assert.Equal(0, LongPeriodogram.PeakHz([5, 1, 1], 1, 0, 2));
        Assert.Equal(2, LongPeriodogram.PeakHz([1, 1, 5], 1, 0, 2));
        Assert.Equal(1, LongPeriodogram.PeakHz([0, 1, 0], 1, 0, 2));
        Assert.Equal(2, LongPeriodogram.PeakHz([0, 1, 0.5], 2, 0, 4));
        Assert.Equal(2, LongPeriodogram.PeakHz([0.5, 1, 0], 2, 0, 4));
        Assert.Equal(4, LongPeriodogram.PeakHz([1, 1, 5], 2, 0, 4));

        // Three equal bins have no top: the first of them.
        Assert.Equal(2, LongPeriodogram.PeakHz([1, 1, 1, 1], 2, 2, 4));
        Assert.Equal(0, LongPeriodogram.PeakProminence(new double[30], 1, 10, 20));
    }

    [Fact]
    public void MisuseIsRefused()
    {
        Assert.Throws<ArgumentException>(() => LongPeriodogram.Density(new double[1000], 100));
        Assert.Throws<ArgumentException>(() => LongPeriodogram.Density(new double[1], 100));
        Assert.Throws<ArgumentOutOfRangeException>(() => LongPeriodogram.Density(new double[1024], 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => LongPeriodogram.StretchLength(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => LongPeriodogram.PeakHz(new double[10], 0, 1, 2));
        Assert.Equal(2, LongPeriodogram.Density([1, 2], 100).Length);
        Assert.Throws<ArgumentOutOfRangeException>(() => LongPeriodogram.PeakHz(new double[10], 1, 3.2, 3.8));
        Assert.Equal(32_768, LongPeriodogram.StretchLength(65_535));
        Assert.Equal(65_536, LongPeriodogram.StretchLength(65_536));
    }
}
