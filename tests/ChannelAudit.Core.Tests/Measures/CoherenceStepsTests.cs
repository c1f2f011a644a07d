using System.Collections.Immutable;
using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Coherence in steps of 10 Hz, from densities put together by hand.</summary>
public sealed class CoherenceStepsTests
{
    private static readonly PairBands Bands = PairBands.Of(Made.Frame(2000), Made.Frame(2000));

    [Fact]
    public void StepsCoverBothBandsAndTheUpperEdgeBelongsToTheLast()
    {
        CoherenceSteps steps = Steps(_ => (1, 0));

        Assert.Equal(22 + 15, steps.Steps.Length);
        Assert.Equal(35, steps.Steps[0].Hz);
        Assert.Equal(245, steps.Steps[21].Hz);
        Assert.Equal(305, steps.Steps[22].Hz);
        Assert.Equal(445, steps.Steps[^1].Hz);
        Assert.All(steps.Steps, step => Assert.Equal(1, step.Coherence, 12));
    }

    // With 60 Hz mains 250 and 450 Hz are no harmonics: what only there is not shared is seen in the step before.
    [Theory]
    [InlineData(250, 21)]
    [InlineData(450, 36)]
    public void TheUpperEdgeCountsInTheLastStep(int hz, int step)
    {
        PairBands bands = PairBands.Of(Made.Frame(2000, 60, 60), Made.Frame(2000, 60, 60));
        double[] ones = [.. Enumerable.Repeat(1.0, bands.BinCount)];
        double[] re = [.. ones];
        re[(int)Math.Round(hz / bands.BinHz) - bands.FirstBin] = 0;

        ImmutableArray<(double Hz, double Coherence)> steps = CoherenceSteps.Of(bands, re, new double[bands.BinCount], ones, ones, 20).Steps;

        Assert.Equal(37, steps.Length);
        Assert.Equal([step], Enumerable.Range(0, 37).Where(at => steps[at].Coherence < 0.99));
    }

    [Fact]
    public void ADelayTurnsThePhaseAndLeavesTheSizeOfAStepInWhichItIsTheSame() =>
        Assert.All(Steps(_ => (0.6, 0.8)).Steps, step => Assert.Equal(1, step.Coherence, 12));

    [Fact]
    public void WhatTurnsItsSignInsideAStepCancelsOut() =>
        Assert.All(Steps(bin => (bin % 2 == 0 ? 1 : -1, 0)).Steps, step => Assert.InRange(step.Coherence, 0, 0.05));

    // Of a signal of density 1 in both and noise of density 3 in the second, a quarter of the second is shared.
    [Fact]
    public void NoiseInOneChannelLeavesTheSharedPart()
    {
        double[] ones = [.. Enumerable.Repeat(1.0, Bands.BinCount)];
        double[] fours = [.. Enumerable.Repeat(4.0, Bands.BinCount)];

        CoherenceSteps steps = CoherenceSteps.Of(Bands, ones, new double[Bands.BinCount], ones, fours, 20);

        Assert.All(steps.Steps, step => Assert.Equal(0.25, step.Coherence, 12));
    }

    private static CoherenceSteps Steps(Func<int, (double Re, double Im)> cross)
    {
        double[] ones = [.. Enumerable.Repeat(1.0, Bands.BinCount)];
        double[] re = [.. Enumerable.Range(0, Bands.BinCount).Select(bin => cross(bin).Re)];
        double[] im = [.. Enumerable.Range(0, Bands.BinCount).Select(bin => cross(bin).Im)];
        return CoherenceSteps.Of(Bands, re, im, ones, ones, 20);
    }
}
