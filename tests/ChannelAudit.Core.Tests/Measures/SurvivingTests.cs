using ChannelAudit.Measures;
using ChannelAudit.Setup;
using ChannelAudit.Signals.Spectra;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>What a scoring filter leaves of a spectrum, and by how much a fault shifts the score.</summary>
public sealed class SurvivingTests
{
    private const double Rate = 1000;

    [Fact]
    public void AHighPassLeavesASeventeenthOfASineAtHalfItsCorner()
    {
        // tan(pi f/rate) = 1/2 where the corner's tangent is 1: order 2 passes 1/17 of the power (hand-worked); that is 147.58 Hz, and the sine lies on bin 148.
        SpectralFrame frame = Frame(new ScoringSetup { HighpassHz = 250 });
        double[] density = Welch.Density(Made.Sine(10, 148, Rate, 10_000), Rate, 1000);

        Surviving left = Surviving.Of(density, frame, 19);

        Assert.Equal(50.0 / 17, left.Total, 0.05);
    }

    [Fact]
    public void ANotchTakesItsFiveBinsAndNothingElse()
    {
        SpectralFrame frame = Frame(new ScoringSetup { NotchesHz = [50] });
        double[] density = Welch.Density(Made.Sum(Made.Sine(10, 50, Rate, 10_000), Made.Sine(4, 150, Rate, 10_000)), Rate, 1000);

        Surviving left = Surviving.Of(density, frame, 19);

        Assert.Equal(8, left.Line.Power, 1e-6);
        Assert.Equal(8, left.Total, 1e-6);
        Assert.Equal(8.0 / 58, left.NotchShare, 1e-6);
        Assert.Equal(0, frame.Passes[48]);
        Assert.Equal(1, frame.Passes[47]);
        Assert.Equal(1, frame.Passes[53]);
    }

    [Fact]
    public void SineAndNoiseAdd()
    {
        // sine 1.5 µV rms, white noise of 2 µV: q = 2.25 / 6.25, 1/sqrt(1 - q) = sqrt(6.25/4) = 1.25 (hand-worked).
        SpectralFrame frame = Frame(new ScoringSetup { HighpassHz = 0.5 });
        double[] signal = Made.Sum(Made.Noise(71, 2, 400_000), Made.Sine(1.5 * Math.Sqrt(2), 50, Rate, 400_000));

        Surviving left = Surviving.Of(Welch.Density(signal, Rate, 1000), frame, 799);

        Assert.Equal(25, ScoreShift.OfAddedPower(left.Line.Power, left.Total)!.Value, 0.5);
    }

    [Fact]
    public void WhiteNoiseIsAllNoise()
    {
        SpectralFrame frame = Made.Frame(Rate);

        Surviving left = Surviving.Of(Welch.Density(Made.Noise(72, 3, 400_000), Rate, 1000), frame, 799);

        Assert.Equal(1, left.NoisePower!.Value / left.Total, 0.02);
    }

    [Theory]
    [InlineData(0, 1, 0)]
    [InlineData(0.36, 1, 25)]
    [InlineData(0.75, 1, 100)]
    [InlineData(1, 1, 9900)]
    [InlineData(2, 1, 9900)]
    public void AnAddedShareOfPowerShiftsTheAmplitudeByItsRoot(double fault, double total, double percent) =>
        Assert.Equal(percent, ScoreShift.OfAddedPower(fault, total)!.Value, 1e-6);

    /// <summary>At the most that is told the fault may be everything: nothing is said of what was there without it.</summary>
    [Theory]
    [InlineData(1, true)]
    [InlineData(0.9999, true)]
    [InlineData(0.9998, false)]
    public void AtTheMostNoAmplitudeWithoutTheFaultIsTold(double share, bool isAtMost)
    {
        double percent = ScoreShift.OfAddedPower(share, 1)!.Value;

        Assert.Equal(isAtMost, ScoreShift.IsAtMost(percent));
        Assert.Equal(isAtMost, ScoreShift.Without(100, percent) is null);
    }

    [Fact]
    public void WhatCannotBeSaidIsNotSaid()
    {
        Assert.Null(ScoreShift.OfAddedPower(0, 0));
        Assert.Null(ScoreShift.Without(3, -100));
        Assert.Equal(4, ScoreShift.Without(3, -25)!.Value, 1e-12);
        Assert.Equal(-100, ScoreShift.OfClipping(100), 1e-6);
        Assert.Equal(0, ScoreShift.OfClipping(0));
    }

    [Fact]
    public void AFilterSaysWhatItIs()
    {
        ScoringSetup setup = new() { HighpassHz = 28, LowpassHz = 450, NotchesHz = [50, 150], Order = 4 };

        Assert.Equal("high-pass 28 Hz, low-pass 450 Hz (order 4), notch 50, 150 Hz", ScoringFilter.Of(setup).InWords);
        Assert.Equal("high-pass 20 Hz (order 2)", ScoringFilter.Ordinary.InWords);
        Assert.False(ScoringFilter.Of(new ScoringSetup()).IsStated);
        Assert.Empty(ScoringFilter.Of(new ScoringSetup { LowpassHz = 450 }).Sections(Rate));
    }

    private static SpectralFrame Frame(ScoringSetup setup) =>
        SpectralFrame.Of(Made.Channel(Rate), 50, 50, [], ScoringFilter.Of(setup));
}
