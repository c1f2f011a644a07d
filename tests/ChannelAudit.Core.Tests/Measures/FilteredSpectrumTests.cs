using ChannelAudit.Measures;
using ChannelAudit.Setup;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>What a scoring filter does to densities in whole numbers, and its own numbers.</summary>
public sealed class FilteredSpectrumTests
{
    private static readonly ScoringSetup Notched = new() { NotchesHz = [60, 120] };

    // Bins 1 to 500, 1.0004 Hz wide; each notch takes five.
    [Fact]
    public void ANotchTakesItsShareOfAFlatDensity()
    {
        SpectralFrame frame = Frame(1000.4, Notched);
        double[] flat = [.. Enumerable.Repeat(2.0, frame.Bins)];
        Surviving left = Surviving.Of(flat, frame, 19);

        Assert.Equal(2 * 490 * 1.0004, left.Total, 9);
        Assert.Equal(490 / 500.0, left.NotchShare, 12);
        Assert.Equal(2 * 13 * 1.0004, left.LowPower!.Value, 9);

        // All of it is white: above the band whatever there is, below its top the density that the top has above a tenth of the middle's.
        Assert.Equal(2 * 490 * 1.0004, left.NoisePower!.Value, 9);
    }

    [Fact]
    public void WithNothingLeftTheNotchesLeaveAll()
    {
        Surviving left = Surviving.Of(new double[501], Frame(1000, Notched), 19);

        Assert.Equal((0, 1), (left.Total, left.NotchShare));
        Assert.Null(left.NoisePower);
    }

    // The top of the band holds 1, 80 to 150 Hz 4: noise is what 1 has above 0.4, over 0.9.
    [Fact]
    public void MuscleReachesTheTopWithATenth()
    {
        SpectralFrame frame = Frame(1000, new ScoringSetup { NotchesHz = [250] });
        double[] density = [.. Enumerable.Range(0, 501).Select(bin => bin < 200 ? 4.0 : bin <= 450 ? 1 : 3)];
        Surviving left = Surviving.Of(density, frame, 19);

        // Bins 1 to 450 without five, and 50 above them with what they hold.
        Assert.Equal((0.6 / 0.9 * 445) + 150, left.NoisePower!.Value, 9);
        Assert.Equal((199 * 4) + 246 + 150, left.Total, 9);
        Assert.Equal(left.Total, Surviving.WhitePower(100, density, frame, left.Total), 9);
        Assert.Equal(0, Surviving.WhitePower(0, density, frame, left.Total));
    }

    [Fact]
    public void WithoutNoiseAtTheTopThereIsNone()
    {
        SpectralFrame frame = Frame(1000, Notched);
        double[] density = [.. Enumerable.Range(0, 501).Select(bin => bin < 200 ? 40.0 : 1)];

        Assert.Equal(0, Surviving.Of(density, frame, 19).NoisePower!.Value);
    }

    [Fact]
    public void OfAShortWindowLineAndMuscleAreKnown()
    {
        Surviving left = Surviving.OfShort(new PeakReading(2, 0.1, 50), 7);

        Assert.Equal((9, 7, 1), (left.Total, left.EmgPower, left.NotchShare));
        Assert.Null(left.Narrow);
        Assert.Null(left.LowPower);
        Assert.Null(left.NoisePower);
    }

    // Half the power passes at a corner, whatever the order.
    [Fact]
    public void HighAndLowPassMultiply()
    {
        ScoringFilter both = ScoringFilter.Of(new ScoringSetup { HighpassHz = 250, LowpassHz = 250, Order = 4 });

        Assert.Equal(0.25, both.PowerAt(250, 1000), 12);
        Assert.Equal(0.5, ScoringFilter.Of(new ScoringSetup { HighpassHz = 20 }).PowerAt(20, 1000), 12);
        Assert.Equal(0.5, ScoringFilter.Of(new ScoringSetup { LowpassHz = 400 }).PowerAt(400, 1000), 12);
        Assert.Equal(1, ScoringFilter.Of(Notched).PowerAt(60, 1000));
    }

    [Theory]
    [InlineData(62, true)]
    [InlineData(58, true)]
    [InlineData(62.01, false)]
    [InlineData(118, true)]
    [InlineData(90, false)]
    public void ANotchReachesTwoHertz(double hz, bool isNotched) => Assert.Equal(isNotched, ScoringFilter.Of(Notched).IsNotched(hz));

    [Theory]
    [InlineData(true, "0-2 97-101")]
    [InlineData(false, "")]
    public void ItsBinsAreTheNearestAndTwoOnEachSide(bool withNotches, string closed)
    {
        double[] shares = ScoringFilter.Of(new ScoringSetup { NotchesHz = [0.4, 99.4, 105] }).PowerAtBins(102, 1.0004, 1000.4, withNotches);

        Assert.Equal(closed, Made.Text(BinRange.Where(0, 101, bin => shares[bin] == 0)));
    }

    [Theory]
    [InlineData(2.0, 2, true)]
    [InlineData(1.99, 2, false)]
    [InlineData(2.0, 1, false)]
    [InlineData(null, 2, false)]
    public void DriftIsTakenFromTwoHertzAndTheSecondOrderOn(double? highpassHz, int order, bool takes) =>
        Assert.Equal(takes, ScoringFilter.Of(new ScoringSetup { HighpassHz = highpassHz, LowpassHz = 400, Order = order }).TakesDrift);

    [Theory]
    [InlineData(20.0, 400.0, 1000, 4)]
    [InlineData(20.0, 400.0, 800, 2)]
    [InlineData(20.0, null, 1000, 2)]
    [InlineData(20.0, null, 40, 0)]
    [InlineData(null, 400.0, 1000, 0)]
    public void WhatIsBelowHalfTheRateHasSections(double? highpassHz, double? lowpassHz, double rateHz, int sections) =>
        Assert.Equal(sections, ScoringFilter.Of(new ScoringSetup { HighpassHz = highpassHz, LowpassHz = lowpassHz, Order = 4 }).Sections(rateHz).Length);

    [Theory]
    [InlineData(" (order 3)")]
    [InlineData(", ")]
    [InlineData("high-pass x Hz (order 2)")]
    [InlineData("high-pass 20 Hz (order 2), and more")]
    public void WordsThatSayNoFilterGiveNone(string words) => Assert.Null(ScoringFilter.FromWords(words));

    [Fact]
    public void WordsWithoutAnOrderMeanTheUsual() => Assert.Equal(ScoringSetup.UsualOrder, ScoringFilter.FromWords("high-pass 20 Hz")!.Setup.Order);

    [Theory]
    [InlineData(10, 25, 2)]
    [InlineData(3, -25, -1)]
    [InlineData(5, 0, 0)]
    public void WhatAFaultAddsIsTheRestOfTheAmplitude(double rectified, double percent, double added)
    {
        Assert.Equal(added, ScoreShift.Added(rectified, percent), 12);
        Assert.Equal(rectified - added, ScoreShift.Without(rectified, percent)!.Value, 12);
    }

    [Theory]
    [InlineData(9900, true)]
    [InlineData(9899.9999995, true)]
    [InlineData(9899.99, false)]
    public void TheMostThatIsToldAllowsForRounding(double percent, bool isAtMost) => Assert.Equal(isAtMost, ScoreShift.IsAtMost(percent));

    [Theory]
    [InlineData(-0.5, 0)]
    [InlineData(0, 0)]
    public void LessThanNothingShiftsNothing(double fault, double percent) => Assert.Equal(percent, ScoreShift.OfAddedPower(fault, 1));

    private static SpectralFrame Frame(double rateHz, ScoringSetup setup) => SpectralFrame.Of(Made.Channel(rateHz), 60, 60, [], ScoringFilter.Of(setup));
}
