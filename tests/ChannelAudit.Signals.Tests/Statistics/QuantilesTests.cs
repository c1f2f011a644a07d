using System.Globalization;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Signals.Tests.Oracles;
using CsCheck;

namespace ChannelAudit.Signals.Tests.Statistics;

public sealed class QuantilesTests
{
    /// <summary>NumPy's quantile (linear, type 7) and SciPy's median_abs_deviation.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(40)]
    [InlineData(101)]
    public void QuantilesAgreeWithNumPy(int count)
    {
        var table = OracleTable.Read("quantiles");
        var values = OracleSignals.Signal(31, count, 1000);
        var name = string.Create(CultureInfo.InvariantCulture, $"n{count}");

        foreach (var (column, probability) in new[] { ("q0", 0), ("q05", 0.05), ("q20", 0.2), ("q50", 0.5), ("q90", 0.9), ("q100", 1) })
        {
            Near.One(table.Value(name, column), Quantiles.Type7InPlace([.. values], probability), 1E-12);
        }

        Near.Within(1E-12, table.Value(name, "mad"), RobustScale.Mad(values));
    }

    /// <summary>Model: sorting.</summary>
    [Fact]
    public void SelectionAgreesWithSorting() =>
        Law.Holds(
            Gen.Select(Gen.Int[0, 20].Select(i => (double)i).Array[1, 400], Gen.Double[0, 1]),
            500,
            @case =>
            {
                var (values, share) = @case;
                var rank = (int)(share * (values.Length - 1));
                double[] sorted = [.. values.Order()];
                Assert.Equal(sorted[rank], Quantiles.SelectInPlace([.. values], rank));
            });

    [Fact]
    public void MedianLeavesTheInputAlone()
    {
        double[] values = [9, 1, 5, 3, 7];

        Assert.Equal(5, Quantiles.Median(values));
        Assert.Equal([9, 1, 5, 3, 7], values);
    }

    /// <summary>Row 27: median 3, deviations 2 1 0 1 97 (by hand); factor 1/Φ⁻¹(3/4) as SciPy's scale='normal'.</summary>
    [Fact]
    public void RobustScaleIgnoresOneWildValue()
    {
        double[] values = [1, 2, 3, 4, 100];

        Assert.Equal(1, RobustScale.Mad(values));
        Near.Within(1E-7, 1.4826022, RobustScale.Sigma(values));
        Near.One(1 / MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, 0.75), RobustScale.Normal, 1E-14);
    }

    [Fact]
    public void NothingHasNoQuantile()
    {
        Assert.Throws<ArgumentException>(() => Quantiles.Type7InPlace([], 0.5));
        Assert.Throws<ArgumentException>(() => Quantiles.Median([]));
        Assert.Throws<ArgumentException>(() => RobustScale.Mad([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Quantiles.Type7InPlace(new double[3], 1.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => Quantiles.Type7InPlace(new double[3], double.NaN));
    }
}
