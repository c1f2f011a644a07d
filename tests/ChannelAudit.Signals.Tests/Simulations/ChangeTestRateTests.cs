using ChannelAudit.Signals.Random;
using ChannelAudit.Signals.Trends;
using Xunit.Abstractions;

namespace ChannelAudit.Signals.Tests.Simulations;

/// <summary>How often a change is seen where there is none, in thousands of made series: by far the longest tests.</summary>
public sealed class ChangeTestRateTests(ITestOutputHelper output)
{
    private const int Series = 20_000;

    /// <summary>The share of made series without a change below a level, which is at most the level (with three standard errors of the count).</summary>
    [Theory]
    [InlineData(20, 1, 0.0)]
    [InlineData(40, 1, 0.0)]
    [InlineData(100, 1, 0.0)]
    [InlineData(100, 4, 0.0)]
    [InlineData(60, 2, 0.3)]
    [InlineData(150, 2, 0.5)]
    public void WithoutAChangeProbabilitiesAreAtLeastWhatTheySay(int blocks, int inBlock, double correlation)
    {
        double[] p = Made(blocks, inBlock, correlation);

        foreach (double level in new[] { 0.1, 0.01, 0.001 })
        {
            double share = Share(p, level);
            output.WriteLine(FormattableString.Invariant($"{blocks} x {inBlock}, r {correlation}: {share} at {level}"));

            // What lasts longer than a block is allowed for by an estimate, which costs most far out.
            double allowed = correlation > 0 ? level * (level < 0.01 ? 4 : 2) : level;
            Assert.InRange(share, 0, allowed + (3 * Math.Sqrt(allowed / Series)));
        }
    }

    /// <summary>What the guide admits: few blocks tell too little of a strong correlation.</summary>
    [Theory]
    [InlineData(150, 2, 0.6, 0.022)]
    [InlineData(60, 2, 0.6, 0.033)]
    [InlineData(20, 1, 0.6, 0.054)]
    public void AStrongCorrelationOfFewBlocksIsNotAllAllowedFor(int blocks, int inBlock, double correlation, double told)
    {
        double share = Share(Made(blocks, inBlock, correlation), 0.01);

        output.WriteLine(FormattableString.Invariant($"{blocks} x {inBlock}, r {correlation}: {share} at 0.01"));
        Assert.InRange(share, told - 0.005, told + 0.005);
    }

    private static double[] Made(int blocks, int inBlock, double correlation)
    {
        Pcg32 random = new(4711, (ulong)(blocks + inBlock));
        return [.. Enumerable.Range(0, Series).Select(_ => P(Made(random, blocks, inBlock, correlation)))];
    }

    private static double Share(double[] p, double level) => p.Count(one => one <= level) / (double)p.Length;

    private static double P((double[] Values, int[] Blocks) made) => ChangeTest.Of(made.Values, made.Blocks).P;

    private static (double[] Values, int[] Blocks) Made(Pcg32 random, int blocks, int inBlock, double correlation)
    {
        double[] values = new double[blocks * inBlock];
        double shared = random.NextGaussian();
        for (int i = 0; i < values.Length; i++)
        {
            if (i % inBlock == 0)
            {
                shared = (correlation * shared) + (Math.Sqrt(1 - (correlation * correlation)) * random.NextGaussian());
            }

            values[i] = shared + (inBlock > 1 ? random.NextGaussian() : 0);
        }

        return (values, [.. Enumerable.Range(0, values.Length).Select(i => i / inBlock)]);
    }
}
