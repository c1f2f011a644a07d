using ChannelAudit.Signals.Statistics;
using ChannelAudit.Signals.Tests.Oracles;

namespace ChannelAudit.Signals.Tests.Statistics;

/// <summary>
/// Certified figures of the NIST Statistical Reference Datasets (StRD), page "Univariate Summary Statistics". The sets
/// NumAcc1 to NumAcc4 are made by the rule on their pages; the observations of the others are in fixtures/nist.
/// </summary>
public sealed class MomentsTests
{
    [Theory]
    [InlineData(1, 10000002, 1, -0.5, 1E-13)]
    [InlineData(2, 1.2, 0.1, -0.999, 1E-13)]
    [InlineData(3, 1000000.2, 0.1, -0.999, 1E-8)]
    [InlineData(4, 10000000.2, 0.1, -0.999, 1E-8)]
    public void NistFiguresComeBack(int set, double mean, double deviation, double correlation, double tolerance)
    {
        var values = NumAcc(set);

        Near.One(mean, Moments.Mean(values), 1E-14);
        Near.One(deviation, Moments.StandardDeviation(values), tolerance);
        Near.One(correlation, Moments.LagOneCorrelation(values), tolerance);
    }

    /// <summary>Count and certified figures as the sets' own pages print them (15 digits).</summary>
    [Theory]
    [InlineData("Lew", 200, -177.435000000000, 277.332168044316, -0.307304800605679)]
    [InlineData("Lottery", 218, 518.958715596330, 291.699727470969, -0.120948622967393)]
    [InlineData("Mavro", 50, 2.00185600000000, 0.000429123454003053, 0.937989183438248)]
    [InlineData("Michelso", 100, 299.852400000000, 0.0790105478190518, 0.535199668621283)]
    public void NistFiguresOfObservationsComeBack(string set, int count, double mean, double deviation, double correlation)
    {
        var values = NistColumn.Of(set);

        // Decimals stored as doubles alone move Mavro's deviation by 8E-14 (exact fractions), so 1E-13 leaves little to the arithmetic.
        Assert.Equal(count, values.Length);
        Near.One(mean, Moments.Mean(values), 1E-13);
        Near.One(deviation, Moments.StandardDeviation(values), 1E-13);
        Near.One(correlation, Moments.LagOneCorrelation(values), 1E-13);
    }

    /// <summary>Row 39: 20·log10(20/2) = 20 dB and 10·log10((20² − 2²)/2²) = 19.956 dB (by hand).</summary>
    [Fact]
    public void RootMeanSquareGivesTheRatioInDecibels()
    {
        var strong = Sine(20 * Math.Sqrt(2));
        var weak = Sine(2 * Math.Sqrt(2));
        var (s, w) = (Moments.Rms(strong), Moments.Rms(weak));

        Near.Within(1E-3, 20.00, 20 * Math.Log10(s / w));
        Near.Within(1E-3, 19.956, 10 * Math.Log10(((s * s) - (w * w)) / (w * w)));
    }

    /// <summary>Gauss: 1 + 2 + … + n = n(n+1)/2.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(127)]
    [InlineData(128)]
    [InlineData(129)]
    [InlineData(1000)]
    [InlineData(4097)]
    public void SumCountsEveryValueOnce(int count)
    {
        double[] values = [.. Enumerable.Range(1, count).Select(value => (double)value)];

        Assert.Equal(count * (count + 1) / 2.0, Moments.Sum(values));
    }

    /// <summary>A plain running sum of a million tenths is off by 1.3E-6 (well known); decimal arithmetic says 100000.</summary>
    [Fact]
    public void SumOfManyTenthsKeepsItsDigits()
    {
        var values = new double[1_000_000];
        Array.Fill(values, 0.1);

        Near.One(100_000, Moments.Sum(values), 1E-15);
    }

    [Fact]
    public void TooFewValuesAreRefused()
    {
        Assert.Throws<ArgumentException>(() => Moments.Mean([]));
        Assert.Throws<ArgumentException>(() => Moments.Rms([]));
        Assert.Throws<ArgumentException>(() => Moments.StandardDeviation([1]));
        Assert.Throws<ArgumentException>(() => Moments.LagOneCorrelation([1]));
    }

    [Fact]
    public void ConstantHasNoSpreadAndNoCorrelation()
    {
        Assert.Equal(0, Moments.StandardDeviation([0.1, 0.1, 0.1]));
        Assert.True(double.IsNaN(Moments.LagOneCorrelation([2, 2, 2])));
    }

    /// <summary>By hand, and of 1000 values of 3 and -4 in turn; the median absolute deviation of 1, 3, 3, 7, 5 is 2.</summary>
    [Fact]
    public void TheRootMeanSquareAndTheRobustScaleAreThoseWorkedOutByHand()
    {
        Near.Within(1E-14, Math.Sqrt(12.5), Moments.Rms([3, -4]));
        Near.Within(1E-12, Math.Sqrt(12.5), Moments.Rms([.. Enumerable.Range(0, 1001).Select(n => n == 0 ? Math.Sqrt(12.5) : n % 2 == 0 ? 3.0 : -4)]));
        Near.Within(1E-14, 2 * RobustScale.Normal, RobustScale.Sigma([1, 3, 3, 7, 5]));
    }

    private static double[] Sine(double amplitude) =>
        [.. Enumerable.Range(0, 1000).Select(n => amplitude * Math.Sin(2 * Math.PI * n / 10))];

    private static double[] NumAcc(int set)
    {
        if (set == 1)
        {
            return [10000001, 10000003, 10000002];
        }

        var tenths = set switch { 2 => 10m, 3 => 10000000m, _ => 100000000m };
        return
        [
            (double)((tenths + 2) / 10),
            .. Enumerable.Range(0, 1000).Select(n => (double)((tenths + (n % 2 == 0 ? 1 : 3)) / 10)),
        ];
    }
}
