using System.Collections.Immutable;
using ChannelAudit.Signals.Trends;
using ChannelAudit.Trends;
using Xunit;
using Xunit.Abstractions;

namespace ChannelAudit.Core.Tests.Trends;

/// <summary>The seeds here judge; the limits come from theory (the tail of a Brownian bridge, Holm) and were not chosen on them.</summary>
public sealed class TrendSearchTests(ITestOutputHelper output)
{
    /// <summary>Promised: at most 1 in 100. Of 200 archives 6 and more would have a chance of 1.6 % at exactly that (binomial).</summary>
    [Fact]
    public void OfTwoHundredArchivesWithoutAnyChangeHardlyOneHasAFinding()
    {
        int found = Enumerable.Range(0, 200).Count(seed => !Look(new MadeArchive { Seed = (ulong)(9000 + seed), Recordings = 300 }).Stories.IsEmpty);

        output.WriteLine(FormattableString.Invariant($"{found} of 200"));
        Assert.InRange(found, 0, 5);
    }

    [Fact]
    public void WeeksThatResembleTheOneBeforeAreNoChange()
    {
        int found = Enumerable.Range(0, 100).Count(seed => !Look(new MadeArchive { Seed = (ulong)(19000 + seed), Recordings = 300, WeekCorrelation = 0.6, WeekSpread = 0.2 }).Stories.IsEmpty);

        output.WriteLine(FormattableString.Invariant($"{found} of 100"));
        Assert.InRange(found, 0, 4);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void OneElectrodeThatAgesIsTheOnlyStory(int seed)
    {
        TrendReport report = Look(new MadeArchive
        {
            Seed = (ulong)(29100 + seed),
            Recordings = 1000,
            Rest = (lab, _, _, electrode, week) => lab is "north" && electrode is "C2" ? Math.Log(1.6) * Math.Clamp((week - 50) / 30.0, 0, 1) : 0,
        });

        Tell(report);
        TrendStory story = Assert.Single(report.Stories);
        Assert.Equal(new TrendSubject(TrendBy.Electrode, "north", "C2"), story.Subject);
        Assert.True(story.IsWorse);
        Assert.Equal(TrendMeasure.Rest, story.Findings[0].Measure);
        Assert.InRange(story.Findings[0].After / story.Findings[0].Before, 1.4, 1.9);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void AnAmplifierIsToldOnceAndNotEachOfItsSitesAndElectrodes(int seed)
    {
        TrendReport report = Look(new MadeArchive
        {
            Seed = (ulong)(39200 + seed),
            Recordings = 800,
            Mains = (lab, amplifier, _, _, week) => lab is "south" && amplifier is "B" && week is >= 40 and < 60 ? Math.Log(3) : 0,
        });

        Tell(report);
        TrendStory story = Assert.Single(report.Stories);
        Assert.Equal(new TrendSubject(TrendBy.Amplifier, "south", "B"), story.Subject);
        Assert.Equal(ChangeKind.Episode, story.Findings[0].Kind);
        Assert.InRange(story.Findings[0].From.DayNumber, Monday(37), Monday(43));
        Assert.InRange(story.Findings[0].To!.Value.DayNumber, Monday(57), Monday(63));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void ALabThatGetsBetterIsOneStoryOfAllThatImproved(int seed)
    {
        TrendReport report = Look(new MadeArchive
        {
            Seed = (ulong)(49100 + seed),
            Recordings = 1000,
            NotPassed = (lab, week) => lab is "south" ? 0.3 * (1 - Math.Clamp((week - 30) / 40.0, 0, 1)) : 0,
            Rest = (lab, _, _, _, week) => lab is "south" ? -0.15 * Math.Clamp((week - 30) / 40.0, 0, 1) : 0,
        });

        Tell(report);
        TrendStory story = Assert.Single(report.Stories);
        Assert.Equal(new TrendSubject(TrendBy.Lab, "south", "south"), story.Subject);
        Assert.False(story.IsWorse);
        Assert.Equal(["not_passed", "rest_rms"], story.Findings.Select(finding => finding.Measure.Code).Order(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    [Fact]
    public void FewerThanSixteenWeeksAreNotAssessed()
    {
        TrendReport report = Look(new MadeArchive { Seed = 5, Recordings = 200, Weeks = 15 });

        Assert.Equal(0, report.LookedAt);
        Assert.NotEmpty(report.Lines);
        Assert.Empty(report.Stories);
    }

    [Fact]
    public void RecordingsWithoutADayAreCountedAndLeftOut()
    {
        ImmutableArray<TrendSession> sessions = new MadeArchive { Seed = 5, Recordings = 50 }.Make();

        TrendReport report = TrendReport.Of(sessions.Select((session, i) => i < 10 ? session with { Day = null } : session), TestContextless);

        Assert.Equal(10, report.WithoutDay);
        Assert.Equal(40, report.Sessions.Length);
    }

    [Fact]
    public void ElectrodesThatAreAlwaysTogetherAreOneLine()
    {
        ImmutableArray<TrendSession> sessions =
        [
            .. new MadeArchive { Seed = 6, Recordings = 60 }.Make().Select(session => session with { Channels = [.. session.Channels.Select(channel => channel with { Electrodes = [channel.Site + "1", channel.Site + "2"] })] }),
        ];

        TrendReport report = TrendReport.Of(sessions, TestContextless);

        TrendLine line = report.Lines.First(one => one.Measure == TrendMeasure.Rest && one.Subject == new TrendSubject(TrendBy.Site, "north", "cheek"));
        Assert.Equal(["cheek1", "cheek2"], line.Same.Select(same => same.Name), StringComparer.Ordinal);
    }

    private static CancellationToken TestContextless => CancellationToken.None;

    private static int Monday(int week) => new DateOnly(2023, 1, 2).AddDays(7 * week).DayNumber;

    private void Tell(TrendReport report)
    {
        foreach (TrendFinding finding in report.Stories.SelectMany(story => story.Findings))
        {
            output.WriteLine(FormattableString.Invariant($"{finding.Line.Subject} {finding.Measure.Code} {finding.Kind} {finding.From:yyyy-MM-dd} {finding.To:yyyy-MM-dd} {finding.Before:G3} to {finding.After:G3}, p {finding.P:G2}, corrected {finding.CorrectedP:G2}, r {finding.Correlation:G2}, {finding.Line.Sessions} in {finding.Line.Weeks} of {report.LookedAt}"));
        }
    }

    private static TrendReport Look(MadeArchive archive) => TrendReport.Of(archive.Make(), TestContextless);
}
