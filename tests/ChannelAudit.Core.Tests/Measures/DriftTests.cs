using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Baseline levels, slope, range and headroom on lines and steps whose answers are known.</summary>
public sealed class DriftTests
{
    [Theory]
    [InlineData(2000)]
    [InlineData(497.4)]
    public void ALineHasItsSlope(double rateHz)
    {
        double perSample = 600 / (60 * rateHz);

        Drift drift = Of([.. Enumerable.Range(0, (int)(10 * rateHz)).Select(n => 50 + (perSample * n))], rateHz, new Rails(null, null, false, false, 1));

        Assert.Equal(600, drift.SlopePerMinute, 1e-6);
        Assert.Null(drift.HeadroomPercent);
    }

    [Fact]
    public void ALevelIsTheMedianOfTenMeans()
    {
        // Parts of 900, 900, 900, 23, 24 ... 29: the middle two of ten are 27 and 28.
        double[] second = [.. Enumerable.Range(0, 1000).Select(n => n / 100 < 3 ? 900.0 : 20 + (n / 100))];
        BaselineLevels levels = new(1000, 1000);
        levels.Add(second, 0);

        Assert.Equal(27.5, Assert.Single(levels.Levels), 1e-9);
        Assert.Equal([0.5], levels.Times.ToArray());
    }

    // 497 samples in ten parts of 49 or 50, and a second of five samples in five.
    [Fact]
    public void PartsShareASecondOutEvenly()
    {
        double[] second = new double[497];
        int[] ends = [49, 99, 149, 198, 248, 298, 347, 397, 447, 497];
        for (int part = 0, i = 0; part < 10; part++)
        {
            for (; i < ends[part]; i++)
            {
                second[i] = part * part;
            }
        }

        BaselineLevels levels = new(497, 497.4);
        levels.Add([.. second, .. second], 4974);
        BaselineLevels few = new(5, 5);
        few.Add([1, 2, 30, 40, 50], 10);

        Assert.Equal([20.5, 20.5], levels.Levels.ToArray());
        Assert.Equal([10 + (248.5 / 497.4), 10 + (745.5 / 497.4)], levels.Times.Select(time => Math.Round(time, 12)), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal([30.0], few.Levels.ToArray());
        Assert.Equal([2.5], few.Times.ToArray());
    }

    [Theory]
    [InlineData(null, 100.0, 25, 75.0)]
    [InlineData(-100.0, null, -25, 75.0)]
    [InlineData(-200.0, 100.0, 50, 50.0)]
    [InlineData(-200.0, 100.0, -100, 50.0)]
    [InlineData(0.0, 4096.0, 1024, 50.0)]
    [InlineData(-4096.0, 0.0, -3072, 50.0)]
    [InlineData(100.0, 300.0, 150, 50.0)]
    [InlineData(null, 0.0, -5, null)]
    [InlineData(null, 100.0, 101, 0.0)]
    public void RoomIsAShareOfTheRailsDistance(double? lower, double? upper, double level, double? percent) =>
        Assert.Equal(percent, Of([.. Enumerable.Repeat(level, 2000)], 1000, new Rails(lower, upper, false, false, 1)).HeadroomPercent);

    [Fact]
    public void OneLevelHasNoDrift() => Assert.Throws<ArgumentException>(() => Of(new double[1000], 1000, default));

    [Fact]
    public void AnUnfinishedSecondGivesNoLevel()
    {
        BaselineLevels levels = new(1000, 1000);
        levels.Add(new double[2999], 0);

        Assert.Equal(2, levels.Count);
    }

    [Fact]
    public void OneStepFarOffDoesNotMoveTheSlope()
    {
        // 0.5 a second with 5 sin(2 pi j/10) on top and +300 each 7th: Theil-Sen 0.5 (SciPy's theilslopes), least squares 0.249.
        double[] samples =
        [
            .. Enumerable.Range(0, 60).SelectMany(j =>
                Enumerable.Repeat((0.5 * j) + (5 * Math.Sin(2 * Math.PI * j / 10)) + (j % 7 == 0 ? 300 : 0), 100)),
        ];

        Assert.Equal(0.5 * 60, Of(samples, 100, new Rails(null, null, false, false, 1)).SlopePerMinute, 1e-4);
    }

    [Theory]
    [InlineData(800, 20)]
    [InlineData(-600, 40)]
    [InlineData(0, 100)]
    [InlineData(1000, 0)]
    public void HeadroomIsWhatIsLeftToTheNearerRail(double level, double percent)
    {
        Drift drift = Of([.. Enumerable.Repeat(level, 3000)], 1000, new Rails(-1000, 1000, false, false, 1));

        Assert.Equal(percent, drift.HeadroomPercent!.Value, 1e-9);
    }

    // What counts is the level nearest to a rail, not the last or the middle one.
    [Theory]
    [InlineData(60, 10, 40)]
    [InlineData(-150, 20, 25)]
    [InlineData(20, -150, 25)]
    public void TheWorstLevelCounts(double first, double second, double percent)
    {
        double[] samples = [.. Enumerable.Repeat(first, 1000), .. Enumerable.Repeat(second, 1000)];

        Assert.Equal(percent, Of(samples, 1000, new Rails(-200, 100, false, false, 1)).HeadroomPercent!.Value, 1e-9);
    }

    [Fact]
    public void TheRangeLeavesFivePercentOnEachSideOut()
    {
        double[] samples = [.. Enumerable.Range(0, 101).SelectMany(j => Enumerable.Repeat((double)j, 100))];

        Assert.Equal(90, Of(samples, 100, new Rails(null, null, false, false, 1)).Range, 1e-9);
    }

    private static Drift Of(double[] samples, double rateHz, Rails rails)
    {
        BaselineLevels levels = new((int)Math.Round(rateHz), rateHz);
        levels.Add(samples, 0);
        return Drift.Of(levels, rails);
    }
}
