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
