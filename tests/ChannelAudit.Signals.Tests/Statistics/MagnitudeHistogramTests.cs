using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Signals.Tests.Statistics;

public sealed class MagnitudeHistogramTests
{
    /// <summary>Sizes 1 to 1000, of either sign: every quantile within a step of 1/128.</summary>
    [Theory]
    [InlineData(0.01, 10)]
    [InlineData(0.5, 500)]
    [InlineData(0.99, 990)]
    [InlineData(1, 1000)]
    public void QuantilesAreRightToAStep(double probability, double expected)
    {
        var histogram = new MagnitudeHistogram();
        for (var size = 1; size <= 1000; size++)
        {
            histogram.Add(size % 2 == 0 ? size : -size);
        }

        Assert.InRange(histogram.Quantile(probability), expected, expected * (1 + (1.0 / 64)));
        Assert.Equal(1000, histogram.Total);
    }

    [Fact]
    public void NothingAndZerosGiveZero()
    {
        var histogram = new MagnitudeHistogram();
        Assert.Equal(0, histogram.Quantile(0.99));

        histogram.Add(0);
        histogram.Add(-0.0);

        Assert.Equal(0, histogram.Quantile(0.99));
    }
}
