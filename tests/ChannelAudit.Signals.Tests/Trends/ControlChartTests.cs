using ChannelAudit.Signals.Trends;
using Xunit;

namespace ChannelAudit.Signals.Tests.Trends;

/// <summary>The worked examples of the NIST/SEMATECH e-Handbook of Statistical Methods.</summary>
/// <remarks>
/// Sections 6.3.2.4 (itl.nist.gov/div898/handbook/pmc/section3/pmc324.htm) and 6.3.2.3 (pmc323.htm). The pages themselves could not be opened here: their numbers are as several
/// public projects quote them, each naming the page, and agree between those and with the recursions by hand.
/// </remarks>
public sealed class ControlChartTests
{
    private static readonly double[] Averaged =
        [52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

    private static readonly double[] Summed =
    [
        324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600,
        324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350,
    ];

    [Fact]
    public void AveragesAreThoseOfTheHandbook()
    {
        double[] printed = [50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99];

        double[] averages = Ewma.Of(Averaged, 50, 0.3);

        // Printed to two decimals.
        Assert.All(printed.Zip(averages), pair => Assert.InRange(Math.Abs(pair.First - pair.Second), 0, 0.0051));
    }

    [Fact]
    public void LimitsOfTheAverageAreThoseOfTheHandbookAndNothingIsBeyondThem()
    {
        double limit = Ewma.Limit(2.0539, 0.3, 3);

        // 52.5884 and 47.4115 are printed.
        Assert.InRange(50 + limit, 52.5883, 52.5885);
        Assert.InRange(50 - limit, 47.4114, 47.4117);
        Assert.All(Ewma.Of(Averaged, 50, 0.3), average => Assert.InRange(average, 50 - limit, 50 + limit));
    }

    [Fact]
    public void SumsAreThoseOfTheHandbookAndTheFirstSignalIsTheFourteenth()
    {
        double[] up = [0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16.00, 19.04];
        double[] down = [0, 0.01, 0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.25, 0.31, 0, 0, 0, 0, 0, 0, 0, 0, 0];

        Cusum sums = Cusum.Of(Summed, 325, 0.3175);

        // Printed to two decimals; the page rounds on the way, which gathers to 0.01.
        Assert.All(up.Zip(sums.Up), pair => Assert.InRange(Math.Abs(pair.First - pair.Second), 0, 0.0101));
        Assert.All(down.Zip(sums.Down), pair => Assert.InRange(Math.Abs(pair.First - pair.Second), 0, 0.0101));
        Assert.Equal(13, sums.FirstBeyond(4.1959, isUp: true));
        Assert.Equal(-1, sums.FirstBeyond(4.1959, isUp: false));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1.1)]
    public void AWeightOutOfRangeIsRefused(double weight) => Assert.Throws<ArgumentOutOfRangeException>(() => Ewma.Of([1], 0, weight));
}
