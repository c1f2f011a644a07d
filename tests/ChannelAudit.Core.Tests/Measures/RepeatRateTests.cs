using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>The share of repeats: right for noise of any step, whatever share of the channel is dead.</summary>
public sealed class RepeatRateTests
{
    [Theory]
    [InlineData(4)]
    [InlineData(2)]
    [InlineData(1.2)]
    [InlineData(0.8)]
    [InlineData(0.5)]
    [InlineData(0.3)]
    public void NoiseRepeatsAsOftenAsItsCodesSay(double deviation)
    {
        double[] noise = [.. Made.Noise(91, deviation, 100_000).Select(value => Math.Round(value))];

        // Two samples fall on the same code with the sum of the squared shares of the codes.
        double expected = noise.GroupBy(value => value).Sum(code => Math.Pow((double)code.Count() / noise.Length, 2));

        Assert.Equal(expected, ChanceOf(noise), 0.03);
        Assert.Equal(deviation < 1, FlatLimits.Of(1000, 1, true, ChanceOf(noise), ChanceOf(noise), noise.Length).IsCoarse);
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(0.9)]
    public void DeadStretchesDoNotMakeAChannelCoarse(double deadShare)
    {
        double[] noise = [.. Made.Noise(92, 20, 20_000).Select(value => Math.Round(value))];
        double[] dead = [.. noise.Select((value, i) => i % 1000 < 1000 * deadShare ? 7 : value)];

        Assert.Equal(ChanceOf(noise), ChanceOf(dead), 0.02);
    }

    [Fact]
    public void AShortFileHeldAtItsRailForHalfOfItsTimeIsNotCoarse()
    {
        double[] noise = [.. Made.Noise(93, 40, 375).Select(value => Math.Round(value))];
        Array.Fill(noise, 4095, 50, 115);
        Array.Fill(noise, 4095, 200, 60);

        Assert.True(ChanceOf(noise) < 0.1);
    }

    [Fact]
    public void AChannelThatNeverMovesIsDeadNotCoarse() => Assert.Equal(0, ChanceOf(new double[5000]));

    [Fact]
    public void StepsFarAboveTheNoiseAreCoarse()
    {
        double[] noise = [.. Made.Noise(94, 0.17, 60_000).Select(value => Math.Round(value))];

        Assert.Contains(noise, value => value != 0);
        Assert.True(ChanceOf(noise) > 0.9);
    }

    private static double ChanceOf(double[] samples)
    {
        RepeatRate rate = new();
        rate.Add(samples);
        return rate.Chance;
    }
}
