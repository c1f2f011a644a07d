using ChannelAudit.Reports.Figures.Sheet;

namespace ChannelAudit.Reports.Tests.Figures;

public sealed class ValueAxisTests
{
    [Fact]
    public void ALinearAxisIsStraight()
    {
        ValueAxis axis = new(-10, 30, 200, 0);

        Assert.Equal(200, axis.At(-10));
        Assert.Equal(150, axis.At(0));
        Assert.Equal(0, axis.At(30));
        Assert.Equal(0, axis.At(1000));
        Assert.True(float.IsNaN(axis.At(double.NaN)));
    }

    [Fact]
    public void OnARatioAxisEqualRatiosAreEquallyLong()
    {
        ValueAxis axis = new(1, 100, 0, 200, isLog: true);

        Assert.Equal(100, axis.At(10), 4);
        Assert.Equal(0, axis.At(0));
    }

    [Theory]
    [InlineData(0, 1, 5, new[] { "0", "0.2", "0.4", "0.6", "0.8", "1" })]
    [InlineData(-120, 130, 3, new[] { "-100", "0", "100" })]
    [InlineData(0, 580, 6, new[] { "0", "100", "200", "300", "400", "500" })]
    public void TicksAreRound(double from, double to, int most, string[] expected)
    {
        ValueAxis axis = new(from, to, 0, 600);

        Assert.Equal(expected, axis.Ticks(600f / (most + 0.5f)).Select(tick => tick.Text), StringComparer.Ordinal);
    }

    [Fact]
    public void RatioTicksArePowersOfTenAndBetweenThemWhereThereIsRoom()
    {
        Assert.Equal(["0.1", "1", "10"], new ValueAxis(0.08, 20, 0, 200, isLog: true).Ticks(60).Select(tick => tick.Text), StringComparer.Ordinal);
        Assert.Equal(["1", "2", "5", "10", "20"], new ValueAxis(0.8, 30, 0, 400, isLog: true).Ticks(60).Select(tick => tick.Text), StringComparer.Ordinal);
    }
}
