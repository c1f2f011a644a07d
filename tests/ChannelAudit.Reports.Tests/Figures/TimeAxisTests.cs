using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Ribbon;

namespace ChannelAudit.Reports.Tests.Figures;

public sealed class TimeAxisTests
{
    private static readonly TextStyle Style = new(16, Bold: false, Inks.Muted);

    [Fact]
    public void TimeIsLinear()
    {
        TimeAxis axis = new(RibbonSamples.Recording("x", 100, [], []), 200, 1200);

        Assert.Equal(200, axis.X(0));
        Assert.Equal(450, axis.X(25));
        Assert.Equal(1200, axis.X(100));
    }

    [Fact]
    public void ATrialPastTheEndMakesTheAxisLonger()
    {
        TimeAxis axis = new(RibbonSamples.OddLabels(), 0, 700);

        Assert.Equal(70, axis.ToS);
        Assert.Equal(60, axis.RecordedS);
        Assert.Equal(600, axis.X(60));
    }

    [Theory]
    [InlineData(0.5, "0.05 s")]
    [InlineData(2, "0.2 s")]
    [InlineData(120, "00:10")]
    [InlineData(3600, "10:00")]
    [InlineData(86400, "3:00:00")]
    [InlineData(0, "0 s")]
    [InlineData(1e9, "")]
    public void TicksAreRoundAndNeverTouch(double durationS, string second)
    {
        TimeAxis axis = new(RibbonSamples.Recording("x", durationS, [], []), 400, 1500);

        var ticks = axis.Ticks(Style);

        Assert.NotEmpty(ticks);
        if (second.Length > 0 && durationS > 0)
        {
            Assert.Equal(second, ticks[1].Text);
        }

        for (int tick = 1; tick < ticks.Length; tick++)
        {
            float halves = (TextMeasure.Width(ticks[tick].Text, Style) + TextMeasure.Width(ticks[tick - 1].Text, Style)) / 2;
            Assert.True(axis.X(ticks[tick].Seconds) - axis.X(ticks[tick - 1].Seconds) > halves);
        }
    }

    [Theory]
    [InlineData(155.2, 159.2, "02:36")]
    [InlineData(155.2, 156.2, "02:35.2")]
    [InlineData(155.2, 155.25, "02:35.20")]
    [InlineData(3599.6, 3600.5, "59:59.6")]
    [InlineData(-0.4, 3, "00:00")]
    public void AClockHasDecimalsWhereSecondsAreTooCoarse(double fromS, double toS, string first)
    {
        TimeAxis axis = new(fromS, toS, 50, 600) { IsClock = true };

        var ticks = axis.Ticks(Style);

        Assert.Equal(first, ticks[0].Text);
        Assert.All(ticks, tick => Assert.True(tick.Seconds >= 0));
        for (int tick = 1; tick < ticks.Length; tick++)
        {
            float halves = (TextMeasure.Width(ticks[tick].Text, Style) + TextMeasure.Width(ticks[tick - 1].Text, Style)) / 2;
            Assert.True(axis.X(ticks[tick].Seconds) - axis.X(ticks[tick - 1].Seconds) > halves);
        }
    }

    [Fact]
    public void TrialsThatOverlapLieSideBySide()
    {
        var trials = RibbonSamples.OddLabels().Trials;

        var tracks = TrialTracks.Of(trials);

        Assert.Equal([0, 1, 2, 1], tracks.ToArray());
        Assert.False(TrialTracks.AreCrowded(trials, tracks));
    }

    [Fact]
    public void MoreThanThreeAtOnceAreCrowded()
    {
        System.Collections.Immutable.ImmutableArray<Segments.Trial> trials = [.. Enumerable.Range(1, 4).Select(number => RibbonSamples.OneTrial(number, number, 10, "calm sea"))];

        Assert.True(TrialTracks.AreCrowded(trials, TrialTracks.Of(trials)));
    }
}
