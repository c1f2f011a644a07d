using ChannelAudit.Measures;
using ChannelAudit.Signals.Filters;
using ChannelAudit.Signals.Spectra;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Whiteness: noise against muscle.</summary>
public sealed class WhitenessTests
{
    private const double Rate = 2000;

    [Fact]
    public void WhiteNoiseIsWhite()
    {
        double[] density = Welch.Density(Made.Noise(71, 5, 120_000), Rate, 2000);

        // Its density is 2 sigma^2 / rate everywhere, so that 430 Hz of it hold 430 times that.
        Assert.Equal(1, Whiteness.Of(density, Made.Frame(Rate))!.Value, 0.06);
        double top = Whiteness.Mean(density, Made.Frame(Rate).TopRanges);
        Assert.Equal(430 * 2 * 25 / Rate, Whiteness.NoisePower(top, Made.Frame(Rate).Band), 0.3);
    }

    [Theory]
    [InlineData(230)]
    [InlineData(200)]
    [InlineData(100)]
    public void NoiseBehindALowPassHasTheRatioOfItsResponse(double cornerHz)
    {
        double[] noise = Made.Noise(72, 5, 400_000);
        Butterworth.LowPass(cornerHz, Rate).FilterInPlace(noise);

        // |H|² = 1 / (1 + (tan(pi f/rate) / tan(pi corner/rate))^4): the Butterworth response (Butterworth 1930) by the bilinear transform.
        double expected = Mean(cornerHz, 360, 450) / Mean(cornerHz, 80, 150);
        Assert.Equal(expected, Whiteness.Of(Welch.Density(noise, Rate, 2000), Made.Frame(Rate))!.Value, 0.06 * expected);
    }

    [Fact]
    public void MainsDoNotMakeItWhiteNorMuscular()
    {
        double[] noise = Made.Noise(73, 5, 60_000);
        double plain = Whiteness.Of(Welch.Density(noise, Rate, 2000), Made.Frame(Rate))!.Value;
        double[] humming = Made.Sum(noise, Made.Sine(80, 100, Rate, 60_000), Made.Sine(40, 400, Rate, 60_000));

        Assert.Equal(plain, Whiteness.Of(Welch.Density(humming, Rate, 2000), Made.Frame(Rate))!.Value, 1e-3);
    }

    [Theory]
    [InlineData(2000.0, 400.0, true)]
    [InlineData(2000.0, 300.0, false)]
    [InlineData(500.0, null, false)]
    [InlineData(1000.0, null, true)]
    public void ABandThatEndsBelowThreeHundredHertzCannotTell(double rateHz, double? lowpassHz, bool isTold)
    {
        double[] density = Welch.Density(Made.Noise(74, 5, 20_000), rateHz, (int)rateHz);

        Assert.Equal(isTold, Whiteness.Of(density, Made.Frame(rateHz, lowpassHz: lowpassHz)) is not null);
    }

    private static double Mean(double cornerHz, int fromHz, int toHz) => Enumerable.Range(fromHz, toHz - fromHz + 1)
        .Average(hz => 1 / (1 + Math.Pow(Math.Tan(Math.PI * hz / Rate) / Math.Tan(Math.PI * cornerHz / Rate), 4)));
}
