using ChannelAudit.Signals.Statistics;
using ChannelAudit.Signals.Tests.Oracles;
using CsCheck;

namespace ChannelAudit.Signals.Tests.Statistics;

public sealed class TheilSenTests
{
    /// <summary>SciPy's theilslopes(method='separate').</summary>
    [Theory]
    [InlineData("textbook")]
    [InlineData("five")]
    [InlineData("outliers")]
    [InlineData("noise")]
    [InlineData("long")]
    [InlineData("ties")]
    public void LineAgreesWithSciPy(string name)
    {
        var (x, y) = Points(name);

        var line = TheilSen.Fit(x, y);

        var table = OracleTable.Read("theilslopes");
        Near.One(table.Value(name, "slope"), line.Slope, 1E-9);
        Near.Within(1E-9, table.Value(name, "intercept"), line.Intercept);
    }

    /// <summary>Rows 24, 25 and 26 (by hand and SciPy).</summary>
    [Theory]
    [InlineData("textbook", 2, 3, 1E-12)]
    [InlineData("five", 1.5, 0, 1E-9)]
    [InlineData("outliers", 0.5, double.NaN, 1E-6)]
    public void KnownLinesComeBack(string name, double slope, double intercept, double tolerance)
    {
        var (x, y) = Points(name);

        var line = TheilSen.Fit(x, y);

        Near.Within(tolerance, slope, line.Slope);
        if (!double.IsNaN(intercept))
        {
            Near.Within(tolerance, intercept, line.Intercept);
        }
    }

    /// <summary>Model: all slopes written down. Values in whole steps make ties of slopes, x in thirds ties of x.</summary>
    [Fact]
    public void SearchAgreesWithWritingAllSlopesDown() =>
        Law.Holds(
            Gen.Select(Gen.Int[3, 300], Gen.Int[0, 100_000], Gen.Int[0, 3]),
            200,
            @case =>
            {
                var (count, seed, kind) = @case;
                var noise = OracleSignals.Noise((uint)seed, count);
                double[] x = [.. noise.Select((_, n) => kind == 1 ? Math.Floor((n + 1) / 2.0) : n * 0.1)];
                double[] y = [.. noise.Select((value, n) => kind switch
                {
                    2 => Math.Round(6 * value),
                    3 => Math.Round(1.2 * value),
                    _ => (100 * value) + (0.3 * n),
                })];
                Near.Within(1E-11, TheilSen.DirectSlope(x, y), new SlopeSearch(x, y).Median());
            });

    [Theory]
    [InlineData(0.0)]
    [InlineData(1E-4)]
    [InlineData(25.0)]
    public void SearchAgreesOnALongDrift(double perSecond)
    {
        var y = NoiseOf.Seed(17, 2000, 20);
        double[] x = [.. y.Select((_, n) => (double)n)];
        y = [.. y.Select((value, n) => 40_000 + value + (perSecond * n))];

        Near.Within(1E-11, TheilSen.DirectSlope(x, y), new SlopeSearch(x, y).Median());
    }

    [Fact]
    public void LongConstantAndLongStepsHaveSlopeZero()
    {
        double[] x = [.. Enumerable.Range(0, 7200).Select(n => (double)n)];

        Assert.Equal(0, TheilSen.Fit(x, new double[7200]).Slope);
        Assert.Equal(0, TheilSen.Fit(x, [.. x.Select(n => n < 100 ? 1.0 : 0.0)]).Slope);
    }

    [Fact]
    public void UselessPointsAreRefused()
    {
        double[] descending = [.. Enumerable.Range(0, 900).Select(n => (double)-n)];

        Assert.Throws<ArgumentException>(() => TheilSen.Fit([1], [1]));
        Assert.Throws<ArgumentException>(() => TheilSen.Fit([1, 2], [1]));
        Assert.Throws<ArgumentException>(() => TheilSen.Fit([1, 1], [1, 2]));
        Assert.Throws<ArgumentException>(() => TheilSen.Fit(descending, descending));
        Assert.Throws<ArgumentException>(() => TheilSen.Fit(new double[900], descending));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(1000)]
    public void WithoutTwoDifferentXThereIsNoSlope(int count)
    {
        Assert.Throws<ArgumentException>(() => TheilSen.Fit(new double[count], NoiseOf.Seed(6, count)));
        Assert.Throws<ArgumentException>(() => TheilSen.Fit([1], [1]));
        Assert.Throws<ArgumentException>(() => TheilSen.Fit([], []));
    }

    [Fact]
    public void ALongInputHasToAscendAndBeFinite()
    {
        double[] x = [.. Enumerable.Range(0, 1000).Select(i => (double)i)];
        var y = NoiseOf.Seed(6, 1000);
        y[500] = double.PositiveInfinity;

        Assert.Throws<ArgumentException>(() => TheilSen.Fit(x, y));
        Assert.Throws<ArgumentException>(() => TheilSen.Fit([.. x.Reverse()], x));
    }

    private static (double[] X, double[] Y) Points(string name)
    {
        double[] Count(int count) => [.. Enumerable.Range(0, count).Select(n => (double)n)];
        switch (name)
        {
            case "textbook":
                return (Count(10), [.. Count(10).Select(j => j < 9 ? 3 + (2 * j) : 100)]);
            case "five":
                return (Count(5), [1, 2, 4, 3, 7]);
            case "outliers":
                return (Count(60), [.. Count(60).Select(j => (0.5 * j) + (5 * Math.Sin(2 * Math.PI * j / 10)) + (j % 7 == 6 ? 300 : 0))]);
            default:
                var count = name switch { "noise" => 301, "long" => 1201, _ => 240 };
                double[] x = [.. Count(count).Select(j => string.Equals(name, "ties", StringComparison.Ordinal) ? Math.Floor(j / 3) : 0.5 * j)];
                var noise = OracleSignals.Noise((uint)name.Length, count);
                return (x, [.. x.Select((value, n) => (-0.25 * value) + (40 * noise[n]))]);
        }
    }
}
