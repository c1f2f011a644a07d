using ChannelAudit.Measures;
using ChannelAudit.Signals.Spectra;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Amplitude in the band.</summary>
public sealed class BandAmplitudeTests
{
    [Fact]
    public void WhiteNoiseHasTheShareOfItsPowerThatLiesInTheBand()
    {
        double[] density = Welch.Density(Made.Noise(41, 1, 120_000), 1000, 1000);

        // 430 of 500 Hz: sqrt(0.86).
        Assert.Equal(0.927, Math.Sqrt(BandAmplitude.Power(density, Made.Frame(1000))!.Value), 0.01 * 0.927);
    }

    [Fact]
    public void MainsDoNotCountAsMuscle()
    {
        double[] noise = Made.Noise(42, 1, 60_000);
        SpectralFrame frame = Made.Frame(1000);
        double without = BandAmplitude.Power(Welch.Density(noise, 1000, 1000), frame)!.Value;
        double with = BandAmplitude.Power(Welch.Density(Made.Sum(noise, Made.Sine(50, 50, 1000, 60_000), Made.Sine(20, 450, 1000, 60_000)), 1000, 1000), frame)!.Value;

        Assert.Equal(without, with, 0.002 * without);
    }

    [Theory]
    [InlineData(2000, null, 450)]
    [InlineData(1000, null, 450)]
    [InlineData(497.4, null, 223.83)]
    [InlineData(2000, 400.0, 360)]
    public void TheBandEndsWhereRateAndLowPassSay(double rateHz, double? lowpassHz, double topHz)
    {
        EmgBand band = EmgBand.Of(Made.Channel(rateHz, lowpassHz: lowpassHz));

        Assert.Equal(20, band.FromHz);
        Assert.Equal(topHz, band.ToHz, 1e-9);
    }

    [Fact]
    public void ClippingOnePercentOfGaussianNoiseLowersItsAmplitudeByNineTenthsOfAPercent()
    {
        double[] noise = Made.Noise(43, 1, 1_000_000);
        double rail = 2.5758293035489004;
        double[] clipped = [.. noise.Select(value => Math.Clamp(value, -rail, rail))];
        ClippingCount count = new(new Rails(-rail, rail, false, false, 0));
        count.Add(clipped, 0);
        count.Break(clipped.Length);

        // 1 % of a Gaussian lies beyond 2.576 sigma; rms of the clipped one: -0.911 % (integral of the normal density).
        Assert.Equal(1, 100.0 * count.Samples / clipped.Length, 0.03);
        double loss = 100 * (1 - Math.Sqrt(clipped.Sum(value => value * value) / noise.Sum(value => value * value)));
        Assert.Equal(0.911, loss, 0.02);
    }
}
