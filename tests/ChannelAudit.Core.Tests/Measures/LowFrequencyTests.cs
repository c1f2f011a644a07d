using ChannelAudit.Measures;
using ChannelAudit.Signals.Spectra;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Power below the band.</summary>
public sealed class LowFrequencyTests
{
    private const double Rate = 1000;

    [Theory]
    [InlineData(4, 50)]
    [InlineData(8, 50)]
    [InlineData(13, 50)]
    [InlineData(19, 0)]
    [InlineData(30, 0)]
    public void ASineCountsWithHalfItsSquareInsideTwoToFifteenHertz(double hz, double power)
    {
        // A periodic Hann window spreads a sine on a bin over three bins, whose density sums to A²/2 (Harris 1978, Proc. IEEE 66:51-83).
        double[] density = Welch.Density(Made.Sine(10, hz, Rate, 10_000), Rate, 1000);

        Assert.Equal(power, LowFrequency.Power(density, Made.Frame(Rate)), 1e-9);
    }

    [Fact]
    public void WhiteNoiseHasFourteenBinsOfItsDensity()
    {
        // One-sided density of white noise: 2 sigma^2 / rate.
        double[] density = Welch.Density(Made.Noise(61, 3, 200_000), Rate, 1000);

        Assert.Equal(14 * 2 * 9 / Rate, LowFrequency.Power(density, Made.Frame(Rate)), 0.02 * 14 * 18 / Rate);
    }

    [Fact]
    public void ASteadyLevelAndASlowRampAreNoMotion()
    {
        double[] ramp = [.. Enumerable.Range(0, 10_000).Select(n => 1000 + (50.0 / 60 * n / Rate))];

        Assert.True(LowFrequency.Power(Welch.Density(ramp, Rate, 1000), Made.Frame(Rate)) < 1e-2);
    }
}
