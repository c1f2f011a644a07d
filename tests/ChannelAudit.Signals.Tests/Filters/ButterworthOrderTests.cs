using ChannelAudit.Signals.Filters;
using ChannelAudit.Signals.Tests.Oracles;

namespace ChannelAudit.Signals.Tests.Filters;

/// <summary>Filters of any order: their power response, and the sections that make it.</summary>
public sealed class ButterworthOrderTests
{
    [Theory]
    [InlineData("highpass-20-2000-2", true, 20, 2000, 2)]
    [InlineData("highpass-28-1024-5", true, 28, 1024, 5)]
    [InlineData("highpass-10-497.4-1", true, 10, 497.4, 1)]
    [InlineData("lowpass-400-1000-2", false, 400, 1000, 2)]
    [InlineData("lowpass-150-2000-8", false, 150, 2000, 8)]
    public void ThePowerResponseAgreesWithSciPy(string name, bool high, double cornerHz, double rateHz, int order)
    {
        var table = OracleTable.Read("response");

        double[] found = [.. table.Column(name, "hz").Select(hz => high
            ? Butterworth.HighPassPower(order, cornerHz, rateHz, hz)
            : Butterworth.LowPassPower(order, cornerHz, rateHz, hz))];

        Near.All(table.Column(name, "power"), found, 1E-9);
    }

    /// <summary>With the corner at a quarter of the rate its tangent is 1; where the tangent is 1/2 the answer of order 2 is 1/(1 + 2^4).</summary>
    [Fact]
    public void HalfAndASeventeenthComeOutByHand()
    {
        var half = 1000 * Math.Atan(0.5) / Math.PI;

        Assert.Equal(0.5, Butterworth.HighPassPower(2, 250, 1000, 250), 1E-12);
        Assert.Equal(0.5, Butterworth.LowPassPower(7, 250, 1000, 250), 1E-12);
        Assert.Equal(1.0 / 17, Butterworth.HighPassPower(2, 250, 1000, half), 1E-12);
        Assert.Equal(16.0 / 17, Butterworth.LowPassPower(2, 250, 1000, half), 1E-12);
    }

    [Fact]
    public void CornersBeyondHalfTheRateStopOrPassEverything()
    {
        Assert.Equal(0, Butterworth.HighPassPower(2, 500, 1000, 499));
        Assert.Equal(1, Butterworth.LowPassPower(2, 500, 1000, 499));
        Assert.Equal(0, Butterworth.HighPassPower(2, 20, 1000, 0));
        Assert.Equal(1, Butterworth.HighPassPower(2, 20, 1000, 500));
        Assert.Equal(0, Butterworth.LowPassPower(2, 20, 1000, 500));
    }

    [Theory]
    [InlineData("plain", 20, 0, 2000, 2)]
    [InlineData("both", 28, 250, 1024, 5)]
    [InlineData("steep", 10, 200, 497.4, 8)]
    public void TheMeanMagnitudeBehindTheSectionsAgreesWithSciPyWhateverTheBlocks(string name, double highHz, double lowHz, double rateHz, int order)
    {
        var sections = Butterworth.HighPassSections(order, highHz, rateHz);
        RectifiedFilter filter = new(lowHz > 0 ? sections.AddRange(Butterworth.LowPassSections(order, lowHz, rateHz)) : sections);
        var signal = OracleSignals.Signal(23, 4000, rateHz);
        var output = new double[4000];

        var sum = filter.Filter(signal.AsSpan(0, 1), output.AsSpan(0, 1))
            + filter.Filter(signal.AsSpan(1, 2500), output.AsSpan(1, 2500))
            + filter.Filter(signal.AsSpan(2501), output.AsSpan(2501));

        Near.One(OracleTable.Read("rectified").Value(name, "mean"), sum / 4000, 1E-8);
    }

    [Fact]
    public void EverySampleIsAMagnitudeAndAPieceForgetsTheLast()
    {
        RectifiedFilter filter = new(Butterworth.HighPassSections(5, 20, 1000));
        var signal = OracleSignals.Signal(23, 1000, 1000);
        var output = new double[1000];
        var again = new double[1000];

        var sum = filter.Filter(signal, output);
        filter.Restart();

        Assert.All(output, value => Assert.True(value >= 0));
        Assert.Equal(output.Sum(), sum, 1E-9);
        Assert.Equal(0, filter.Filter([], []));
        Assert.Equal(sum, filter.Filter(signal, again));
        Assert.Equal(output, again);
    }

    [Fact]
    public void AnOffsetMakesNoStepAtTheStartOfAnyPiece()
    {
        RectifiedFilter filter = new(Butterworth.HighPassSections(3, 20, 1000));
        double[] level = [.. Enumerable.Repeat(5000.0, 100)];
        var output = new double[100];

        var first = filter.Filter(level, output);
        filter.Restart();
        double[] other = [.. Enumerable.Repeat(-700.0, 100)];
        var second = filter.Filter(other, output);

        Assert.Equal(0, first, 1E-6);
        Assert.Equal(0, second, 1E-6);
    }

    [Fact]
    public void WhatCannotBeAskedIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Butterworth.HighPassSections(0, 20, 1000));
        Assert.Throws<ArgumentOutOfRangeException>(() => Butterworth.LowPassSections(2, 500, 1000));
        Assert.Throws<ArgumentException>(() => new RectifiedFilter([]));
        Assert.Throws<ArgumentException>(() => new RectifiedFilter(Butterworth.HighPassSections(2, 20, 1000)).Filter(new double[2], new double[3]));
    }
}
