using System.Globalization;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Signals.Tests.Oracles;
using MathNet.Numerics.Distributions;

namespace ChannelAudit.Signals.Tests.Statistics;

public sealed class WilsonIntervalTests
{
    /// <summary>Row 33: Newcombe 1998 (from memory); rows 34 and 35: statsmodels.</summary>
    [Theory]
    [InlineData(81, 263, 0.25529, 0.36621)]
    [InlineData(15, 148, 0.06239, 0.16049)]
    [InlineData(0, 20, 0, 0.16113)]
    [InlineData(1, 29, 0.00611, 0.17176)]
    [InlineData(23, 60, 0.27088, 0.50982)]
    public void PublishedIntervalsComeBack(long successes, long trials, double low, double high)
    {
        var interval = WilsonInterval.Of(successes, trials);

        Near.Within(1E-5, low, interval.Low);
        Near.Within(1E-5, high, interval.High);
    }

    /// <summary>Row 35: Clopper and Pearson's exact upper limit of 0 of 20, 0.16843, is a quantile of Beta(1, 20) (Math.NET); Wilson's is no wider.</summary>
    [Fact]
    public void WilsonIsNoWiderThanTheExactInterval()
    {
        var exact = Beta.InvCDF(1, 20, 0.975);

        Near.Within(1E-5, 0.16843, exact);
        Assert.True(WilsonInterval.Of(0, 20).High < exact);
        foreach (var (successes, trials) in new[] { (15, 148), (1, 29), (23, 60), (81, 263) })
        {
            Assert.True(WilsonInterval.Of(successes, trials).High < Beta.InvCDF(successes + 1, trials - successes, 0.975));
        }
    }

    /// <summary>SciPy's binomtest(...).proportion_ci(method='wilson').</summary>
    [Fact]
    public void IntervalsAgreeWithSciPy()
    {
        var table = OracleTable.Read("wilson");
        foreach (var (successes, trials) in new[] { (81, 263), (15, 148), (0, 20), (1, 29), (23, 60), (60, 60), (0, 1), (4, 51), (1500, 24000) })
        {
            foreach (var level in new[] { 0.9, 0.95, 0.99 })
            {
                var interval = WilsonInterval.Of(successes, trials, level);
                var name = string.Create(CultureInfo.InvariantCulture, $"{successes}/{trials}@{level}");

                Near.Within(1E-9, table.Value(name, "low"), interval.Low);
                Near.Within(1E-9, table.Value(name, "high"), interval.High);
            }
        }
    }

    /// <summary>statsmodels' proportion_confint(method='wilson').</summary>
    [Fact]
    public void IntervalsAgreeWithStatsmodels()
    {
        var table = OracleTable.Read("proportion");
        foreach (var (successes, trials) in new[] { (81, 263), (15, 148), (0, 20), (1, 29), (23, 60), (7, 7) })
        {
            var interval = WilsonInterval.Of(successes, trials);
            var name = string.Create(CultureInfo.InvariantCulture, $"{successes}/{trials}");

            Near.Within(1E-12, table.Value(name, "low"), interval.Low);
            Near.Within(1E-12, table.Value(name, "high"), interval.High);
        }
    }

    [Fact]
    public void ImpossibleCountsAreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => WilsonInterval.Of(0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => WilsonInterval.Of(4, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => WilsonInterval.Of(-1, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => WilsonInterval.Of(1, 3, 1));
    }
}
