using ChannelAudit.Signals.Statistics;
using ChannelAudit.Signals.Tests.Oracles;
using CsCheck;

namespace ChannelAudit.Signals.Tests.Statistics;

public sealed class LimitCurveTests
{
    /// <summary>By hand: of the 2 x 3 pairs the positive is larger in 4 and equal in 1: 4.5/6.</summary>
    [Fact]
    public void PointsAndAreaAreThoseWorkedOutByHand()
    {
        LimitCurve curve = LimitCurve.Of([5, 2, 2, 1, 4], [true, true, false, false, false]);

        Near.Within(1E-12, 4.5 / 6, curve.Area);
        Assert.Equal(
            new[]
            {
                (double.PositiveInfinity, new DetectionCounts(0, 2, 0, 3)), (5, new DetectionCounts(1, 1, 0, 3)), (4, new DetectionCounts(1, 1, 1, 2)),
                (2, new DetectionCounts(2, 0, 2, 1)), (1, new DetectionCounts(2, 0, 3, 0)),
            },
            curve.Points.Select(point => (point.Limit, point.Counts)));
        Assert.Equal(5, curve.Best.Limit);
    }

    /// <summary>SciPy's mannwhitneyu statistic over the product of the numbers.</summary>
    [Theory]
    [InlineData("small", 71, 5, 4)]
    [InlineData("ties", 72, 30, 50)]
    [InlineData("large", 73, 200, 300)]
    public void AreasAgreeWithSciPy(string name, uint seed, int positives, int negatives)
    {
        double[] values = string.Equals(name, "ties", StringComparison.Ordinal) ? Shares.Of(seed, positives + negatives) : OracleSignals.Noise(seed, positives + negatives);
        for (int i = 0; i < positives; i++)
        {
            values[i] += 0.2;
        }

        bool[] truth = [.. Enumerable.Repeat(true, positives), .. Enumerable.Repeat(false, negatives)];

        Near.Within(1E-12, OracleTable.Read("area").Value(name, "area"), LimitCurve.Of(values, truth).Area);
    }

    [Fact]
    public void TurningTheValuesRoundTurnsTheAreaRound() => Law.Holds(
        Gen.Select(Gen.Int[0, 9].Array[12], Gen.Int[1, 11]),
        200,
        one =>
        {
            double[] values = [.. one.Item1.Select(value => (double)value)];
            bool[] truth = [.. Enumerable.Range(0, 12).Select(i => i < one.Item2)];
            double area = LimitCurve.Of(values, truth).Area;
            Near.Within(1E-12, 1 - area, LimitCurve.Of([.. values.Select(value => -value)], truth).Area);
            Near.Within(1E-12, area, LimitCurve.Of([.. values.Select(value => (3 * value) + 7)], truth).Area);
        });

    [Fact]
    public void SharesWithoutPositivesOrNegativesAreAbsent()
    {
        Assert.Equal((null, 0.75, null), (new DetectionCounts(0, 0, 1, 3).Sensitivity, new DetectionCounts(0, 0, 1, 3).Specificity, new DetectionCounts(0, 0, 1, 3).Youden));
        Assert.Equal((0.5, null), (new DetectionCounts(2, 2, 0, 0).Sensitivity, new DetectionCounts(2, 2, 0, 0).Specificity));
        Assert.Throws<ArgumentException>(() => LimitCurve.Of([1, 2], [true, true]));
        Assert.Throws<ArgumentException>(() => LimitCurve.Of([1, 2], [true]));
    }

    /// <summary>Of limits that part the two equally well the highest is taken.</summary>
    [Fact]
    public void OfEquallyGoodLimitsTheHighestIsTheBest()
    {
        Assert.Equal(4, LimitCurve.Of([4, 3, 2, 1], [true, false, true, false]).Best.Limit);
        Assert.Throws<ArgumentException>(() => LimitCurve.Of([4, 3, 2, 1], [true, false, true]));
    }
}
