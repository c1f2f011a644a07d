using ChannelAudit.Measures;
using ChannelAudit.Signals.Spectra;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Line noise on signals whose line is known: a sine of amplitude A has the power A²/2 (analytic).</summary>
public sealed class LineNoiseTests
{
    private const double RateHz = 1000;

    [Fact]
    public void ASineOnABinHasItsPowerInThreeBins()
    {
        double[] density = Welch.Density(Made.Sine(10, 50, RateHz, 1000), RateHz, 1000);

        // A²/2 over the window's noise bandwidth of 1.5 bins; the side bins of a periodic Hann hold a quarter each (Harris 1978).
        Assert.Equal(100.0 / 2 / 1.5, density[50], 1e-9);
        Assert.Equal(50, density[49] + density[50] + density[51], 1e-9);
        Assert.Equal(50, LineNoise.Of(density, Made.Frame(RateHz), 1).Power, 1e-9);
        Assert.Equal(7.0710678118654755, LineNoise.Of(density, Made.Frame(RateHz), 1).Rms, 1e-10);
    }

    [Theory]
    [InlineData(50.25, 49.9917)]
    [InlineData(50.5, 49.975)]
    public void FiveBinsCatchASineBetweenBins(double hz, double expected)
    {
        double[] density = Welch.Density(Made.Sine(10, hz, RateHz, 1000), RateHz, 1000);

        // Computed once with NumPy's FFT: the share of a Hann-windowed sine in the five bins around bin 50.
        Assert.Equal(expected, LineNoise.SumAround(density, 50), 1e-3);
    }

    // Of a flat density: five bins a harmonic, 1.5 for the Hann window, L = K/(1 + (K - 1)/(18 K)) independent segments (Welch 1967), a floor of its median over (1 - 1/(9 L))^3.
    [Theory]
    [InlineData(1, 1.0)]
    [InlineData(5, 4.7872340425531918)]
    [InlineData(20, 18.997361477572557)]
    public void TheErrorShrinksWithTheSegments(int segments, double independent)
    {
        double[] density = [.. Enumerable.Repeat(2.0, 501)];
        SpectralFrame frame = Made.Frame(RateHz);
        double floor = 2 / Math.Pow(1 - (1 / (9 * independent)), 3);

        Assert.Equal(floor * Math.Sqrt(frame.Harmonics.Length * 5 * 1.5 / independent), LineNoise.Of(density, frame, segments).StandardError, 1e-9);
    }

    [Fact]
    public void TheFloorOfTheNoiseIsTakenOff()
    {
        double[] samples = Made.Sum(Made.Sine(10, 50, RateHz, 60_000), Made.Noise(11, 3, 60_000));
        double[] density = Welch.Density(samples, RateHz, 1000);

        PeakReading line = LineNoise.Of(density, Made.Frame(RateHz), 119);

        Assert.Equal(50, line.Power, 0.5);
    }

    [Fact]
    public void TheFloorOfWhiteNoiseIsItsDensity()
    {
        double[] density = Welch.Density(Made.Noise(12, 3, 60_000), RateHz, 1000);

        double[] floors = [.. Enumerable.Range(30, 400).Select(bin => PeakFloor.At(density, bin, PeakFloor.MedianBias(119)))];

        // 2 sigma²/fs, one-sided.
        Assert.Equal(2 * 9 / RateHz, floors.Average(), 0.02 * 0.018);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(19)]
    public void TheFloorIsRightInFewSegmentsToo(int segments)
    {
        List<double> floors = [];
        for (ulong seed = 0; seed < 40; seed++)
        {
            double[] density = Welch.Density(Made.Noise(100 + seed, 3, 500 * (segments + 1)), RateHz, 1000);
            floors.AddRange(Enumerable.Range(0, 20).Select(i => PeakFloor.At(density, 40 + (i * 20), PeakFloor.MedianBias(segments))));
        }

        // Without the correction the median over bins would be 11 % low at 3 segments (chi-squared). The median of 16 skewed, correlated
        // values lies some 2 to 3 % higher than that of many.
        Assert.Equal(0.018, floors.Average(), 0.04 * 0.018);
    }

    [Fact]
    public void HarmonicsAddUpAsPowers()
    {
        double[] samples = Made.Sum(Made.Sine(4, 50, RateHz, 3000), Made.Sine(3, 150, RateHz, 3000, 1), Made.Sine(2, 250, RateHz, 3000, 2));

        PeakReading line = LineNoise.Of(Welch.Density(samples, RateHz, 1000), Made.Frame(RateHz), 5);

        Assert.Equal((16 + 9 + 4) / 2.0, line.Power, 1e-9);
    }

    [Fact]
    public void OnlyHarmonicsInsideTheBandCount()
    {
        SpectralFrame narrow = Made.Frame(RateHz, lowpassHz: 200);

        // 0.9 x 200 Hz = 180 Hz: 150 + 2 Hz fits, 200 + 2 Hz does not.
        Assert.Equal([1, 2, 3], narrow.Harmonics.Select(window => window.Harmonic));
        Assert.Equal([1, 2, 3, 4, 5, 6, 7, 8], Made.Frame(RateHz).Harmonics.Select(window => window.Harmonic));
        Assert.Equal(Made.Frame(RateHz).Harmonics.Length, Made.Frame(RateHz, 50.05).Harmonics.Length);
    }

    [Fact]
    public void NoiseAloneStaysBelowFourStandardErrors()
    {
        SpectralFrame frame = Made.Frame(RateHz);
        int beyond = 0;
        for (ulong seed = 0; seed < 200; seed++)
        {
            PeakReading line = LineNoise.Of(Welch.Density(Made.Noise(500 + seed, 3, 2000), RateHz, 1000), frame, 3);
            beyond += line.Power >= 4 * line.StandardError ? 1 : 0;
        }

        Assert.True(beyond <= 2, FormattableString.Invariant($"{beyond} of 200 windows of 2 s without a line stand 4 standard errors clear"));
    }

    [Theory]
    [InlineData(2000)]
    [InlineData(1000)]
    [InlineData(1024)]
    [InlineData(497.4)]
    public void TheMeasureDoesNotDependOnTheRate(double rateHz)
    {
        SpectralFrame frame = Made.Frame(rateHz);
        int count = (int)(30 * rateHz);
        double[] samples = Made.Sum(Made.Sine(7.5 * Math.Sqrt(2), 50, rateHz, count), Made.Noise(13, 3, count));

        PeakReading line = LineNoise.Of(Welch.Density(samples, rateHz, frame.SegmentLength), frame, Welch.SegmentCount(count, frame.SegmentLength, frame.Hop));

        Assert.Equal(7.5, line.Rms, 0.1);
    }
}
