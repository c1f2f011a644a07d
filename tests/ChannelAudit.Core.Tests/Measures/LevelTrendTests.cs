using ChannelAudit.Measures;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>A level that rises by 1 a minute from 100: in % of its median.</summary>
public sealed class LevelTrendTests
{
    [Fact]
    public void ARiseIsInPercentOfTheMedianAMinute() => Assert.Equal(100 / 104.5, LevelTrend.Of(Minutes(10, 1), Levels(10))!.Value, 12);

    [Fact]
    public void TwiceTheLevelHasTheSameTrend() => Assert.Equal(100 / 104.5, LevelTrend.Of(Minutes(10, 1), [.. Levels(10).Select(level => 2 * level)])!.Value, 12);

    [Fact]
    public void TheMinuteIsCountedFromTheFirstSegment() => Assert.Null(LevelTrend.Of([.. Minutes(10, 0.1).Select(minute => 5 + minute)], Levels(10)));

    [Theory]
    [InlineData(10, 0.12, true)]
    [InlineData(9, 0.2, false)]
    [InlineData(10, 0.11, false)]
    [InlineData(11, 0.1, true)]
    public void TenSegmentsAndAMinuteAreNeeded(int count, double spacing, bool isKnown) => Assert.Equal(isKnown, LevelTrend.Of(Minutes(count, spacing), Levels(count)) is not null);

    [Fact]
    public void WithoutALevelThereIsNone() => Assert.Null(LevelTrend.Of(Minutes(12, 1), new double[12]));

    private static double[] Minutes(int count, double spacing) => [.. Enumerable.Range(0, count).Select(i => i * spacing)];

    private static double[] Levels(int count) => [.. Enumerable.Range(0, count).Select(i => 100.0 + i)];
}
