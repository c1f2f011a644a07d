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

    // Parts of 512 samples: of 64 pairs at least in runs below 32, the median of their shares; else the share of all.
    [Theory]
    [InlineData("2*40", 0.5)]
    [InlineData("4*40", 0.75)]
    [InlineData("31*3", 0.96875)]
    [InlineData("31*2", 0.98360655737704916)]
    [InlineData("32*3", 0.97894736842105268)]
    [InlineData("2*31 40*1", 0.693)]
    [InlineData("2*40 32*5", 0.5)]
    [InlineData("1*64 400*1", 0)]
    [InlineData("1*63 400*1", 0.8636363636363637)]
    [InlineData("500*1", 0)]
    public void RepeatsAreCountedInShortRuns(string runs, double chance)
    {
        Assert.Equal(chance, ChanceOf(Runs(runs)), 0.005);
    }

    [Fact]
    public void TheShareCountsLongRunsToo()
    {
        RepeatRate rate = new();
        Assert.Equal((0, 0), (rate.Share, rate.Chance));
        rate.Add(Runs("1*64 400*1"));

        Assert.Equal(399 / 463.0, rate.Share, 12);
    }

    // Three parts: shares of 1/2, 1/2 and 0 have 1/2 in their middle; of two the lower.
    [Theory]
    [InlineData("2*256 1*512 2*256", 0.5)]
    [InlineData("1*512 2*256 1*512", 0)]
    [InlineData("2*256 1*512", 0)]
    public void ThePartInTheMiddleCounts(string runs, double chance)
    {
        Assert.Equal(chance, ChanceOf(Runs(runs)), 12);
    }

    private static double ChanceOf(double[] samples)
    {
        RepeatRate rate = new();
        rate.Add(samples);
        return rate.Chance;
    }

    // So many runs of a length, each of another value.
    private static double[] Runs(string runs)
    {
        List<double> samples = [];
        foreach (int[] run in runs.Split(' ').Select(text => text.Split('*').Select(part => int.Parse(part, System.Globalization.CultureInfo.InvariantCulture)).ToArray()))
        {
            for (int i = 0; i < run[1]; i++)
            {
                double value = samples.Count;
                samples.AddRange(Enumerable.Repeat(value, run[0]));
            }
        }

        return [.. samples];
    }
}
