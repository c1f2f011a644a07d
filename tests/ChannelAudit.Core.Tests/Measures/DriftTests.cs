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
