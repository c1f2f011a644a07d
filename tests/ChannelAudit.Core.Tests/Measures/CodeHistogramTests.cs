using ChannelAudit.Measures;
using ChannelAudit.Signals.Random;
using ChannelAudit.Signals.Statistics;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Counts of codes against sorting: quantiles of type 7, as NumPy and R give by default.</summary>
public sealed class CodeHistogramTests
{
    [Fact]
    public void MedianAndDistancesAgreeWithSorting()
    {
        for (ulong seed = 0; seed < 300; seed++)
        {
            Pcg32 random = new(seed);
            int count = 1 + (int)(60 * random.NextDouble());
            double[] samples = [.. Enumerable.Range(0, count).Select(_ => 0.5 * Math.Round(8 * random.NextGaussian()))];
            CodeHistogram histogram = new(-40, 40, 0.5);
            histogram.Add(samples.AsSpan(0, count / 2));
            histogram.Add(samples.AsSpan(count / 2));

            double median = Quantiles.Median(samples);
            Assert.Equal(median, histogram.Median(), 1e-9);
            foreach (double probability in new[] { 0, 0.3, 0.5, 0.9, 0.999, 1 })
            {
                double[] distances = [.. samples.Select(sample => Math.Abs(sample - median))];
                Assert.Equal(Quantiles.Type7InPlace(distances, probability), histogram.DistanceQuantile(median, probability), 1e-9);
            }
        }
    }

    [Fact]
    public void WhatWasClearedIsForgotten()
    {
        CodeHistogram histogram = new(-10, 10, 1);
        histogram.Add([5, 6, 7]);
        histogram.Clear();
        histogram.Add([-3]);

        Assert.Equal(1, histogram.Total);
        Assert.Equal(-3, histogram.Median());

        histogram.Clear();
        histogram.Add([4, 8, 8]);
        Assert.Equal(8, histogram.Median());
        Assert.Equal(4, histogram.DistanceQuantile(0, 0));
    }

    [Theory]
    [InlineData(-12)]
    [InlineData(70_000)]
    public void WhatIsOutsideItsRangeIsRefused(double value) => Assert.Throws<ArgumentOutOfRangeException>(() => new CodeHistogram(-10, 10, 1).Add([value]));

    [Fact]
    public void OfNothingThereIsNoQuantile()
    {
        CodeHistogram histogram = new(-10, 10, 1);
        histogram.Clear();
        histogram.Add([]);

        Assert.Equal(0, histogram.Total);
        Assert.Throws<InvalidOperationException>(() => histogram.Median());
        Assert.Throws<InvalidOperationException>(() => histogram.DistanceQuantile(0, 0.5));
    }

    // Groups of codes: as many as keep 65 536 of them, by powers of two; without a step 65 536 of the range.
    [Theory]
    [InlineData(0, 65_536, 1, 3, 3)]
    [InlineData(0, 65_537, 1, 3, 4)]
    [InlineData(0, 65_537, 1, 4, 4)]
    [InlineData(0, 262_145, 1, 11, 8)]
    [InlineData(0, 32_768, 0, 1.3, 1.5)]
    [InlineData(5, 5, 0, 5, 5)]
    public void FinerCodesAreCountedInGroups(double least, double greatest, double step, double value, double counted)
    {
        CodeHistogram histogram = new(least, greatest, step);
        histogram.Add([value]);

        Assert.Equal(counted, histogram.Median());
    }

    [Fact]
    public void SixteenBitsAreCountedExactlyAndFinerCodesNearlySo()
    {
        CodeHistogram exact = new(-32768, 32767, 1);
        exact.Add([-32768, 32767, 12345]);
        CodeHistogram fine = new(-8388608, 8388607, 1);
        fine.Add([1_234_567]);

        Assert.Equal(12345, exact.Median());
        Assert.Equal(1_234_567, fine.Median(), 128.0);
    }
}
