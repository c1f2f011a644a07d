using System.Globalization;
using ChannelAudit.Impedance;
using ChannelAudit.Setup;
using Xunit;
using static ChannelAudit.Core.Tests.Impedance.Readings;

namespace ChannelAudit.Core.Tests.Impedance;

/// <summary>Grades, solved contacts, warnings and the time to measure again, each on readings worked out by hand.</summary>
public sealed class ImpedanceReportTests
{
    /// <summary>Common practice: below 5 kΩ good, 5 to 20 wait, above 20 redo; both limits belong to the middle.</summary>
    [Theory]
    [InlineData(0, ImpedanceGrade.Good)]
    [InlineData(4.999, ImpedanceGrade.Good)]
    [InlineData(5.0, ImpedanceGrade.Wait)]
    [InlineData(20.0, ImpedanceGrade.Wait)]
    [InlineData(20.001, ImpedanceGrade.Redo)]
    [InlineData(999, ImpedanceGrade.Redo)]
    public void BothLimitsBelongToTheMiddleGrade(double kohm, ImpedanceGrade grade)
    {
        PairImpedance pair = Report(FormattableString.Invariant($"site\tpair\tkohm\ncheek\ta-b\t{kohm}\n")).Sites[0][ImpedancePair.AToB];

        Assert.Equal((kohm, grade), (pair.Kohm, pair.Grade));
    }

    /// <summary>Contacts of 1, 2 and 1.5 kΩ.</summary>
    [Fact]
    public void AGoodSiteIsSolvedAndWarnsOfNothing()
    {
        ImpedanceReport report = Of(3, 2.5, 3.5);

        Assert.Equal(new SolvedImpedance(1, 2, 1.5), report.Sites[0].Solved);
        Assert.Equal((ImpedanceGrade.Good, ImpedanceGrade.Good), (report.Sites[0].Grade, report.Grade));
        Assert.Empty(report.Warnings);
        Assert.False(report.MeasureAgain);
        Assert.Null(report.Ground);
    }

    [Fact]
    public void ASiteIsAsBadAsItsWorstPair() => Assert.Equal(
        [ImpedanceGrade.Wait, ImpedanceGrade.Redo],
        new[] { Of(3, 4, 5), Of(12, 14, 20.5) }.Select(report => report.Sites[0].Grade!.Value));

    [Theory]
    [InlineData(1.0, 3.1, 3.1, "pair-joined")]
    [InlineData(1.1, 3.4, 3.4, "")]
    [InlineData(1.0, 3.0, 3.1, "")]
    [InlineData(0.5, 8, 8, "pair-joined")]
    [InlineData(7.6, 0.5, 7.6, "ground-joined")]
    [InlineData(7.6, 7.6, 0.5, "ground-joined")]
    [InlineData(0.2, 8, 0.3, "")]
    [InlineData(0.9, 1.0, 0.8, "too-low")]
    [InlineData(0, 0, 0, "too-low")]
    [InlineData(0, 4, 4, "pair-joined")]
    public void TooGoodIsAWarning(double ab, double aGround, double bGround, string expected)
    {
        ImpedanceReport report = Of(ab, aGround, bGround);
        string[] joints = [.. Codes(report).Where(code => code.EndsWith("joined", StringComparison.Ordinal) || code is "too-low")];

        Assert.Equal(expected, string.Join(' ', joints));
        Assert.Equal(expected.Length > 0 || report.Warnings.Any(warning => warning.Code == ImpedanceWarningCode.Inconsistent), report.Sites[0].Grade >= ImpedanceGrade.Doubtful);
    }

    /// <summary>12.1 is more than 1.2 times 5 + 5; 12 is not.</summary>
    [Theory]
    [InlineData(5, 5, 12.0, false)]
    [InlineData(5, 5, 12.1, true)]
    [InlineData(12.1, 5, 5, true)]
    [InlineData(0.3, 0.6, 1.5, false)]
    public void ReadingsThatNoStarGivesAreInconsistent(double ab, double aGround, double bGround, bool isInconsistent)
    {
        ImpedanceReport report = Of(ab, aGround, bGround);

        Assert.Equal(isInconsistent, Codes(report).Contains("inconsistent", StringComparer.Ordinal));
        Assert.Equal(isInconsistent, report.Sites[0].Grade == ImpedanceGrade.Doubtful);
    }

    /// <summary>Contacts a, b with a ground of 2: more than 5 apart, or more than 3 times and not both small.</summary>
    [Theory]
    [InlineData(6, 11, false)]
    [InlineData(6, 11.1, true)]
    [InlineData(11.1, 6, true)]
    [InlineData(1.5, 4.5, false)]
    [InlineData(1.5, 4.6, true)]
    [InlineData(0.2, 1.2, false)]
    [InlineData(0.2, 1.3, true)]
    public void UnequalElectrodesAreAnImbalance(double a, double b, bool isImbalance)
    {
        ImpedanceReport report = Of(Math.Round(a + b, 3), Math.Round(a + 2, 3), Math.Round(b + 2, 3));

        Assert.Equal(isImbalance ? ["imbalance"] : [], Codes(report), StringComparer.Ordinal);
        if (isImbalance)
        {
            Assert.StartsWith($"renew electrode {(a > b ? "a" : "b")} alone", report.Warnings[0].Advice, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(3, 3.9, false)]
    [InlineData(3, 4.0, true)]
    [InlineData(1, 1.5, false)]
    [InlineData(1, 1.6, true)]
    public void TheGroundMustBeTheSameAtEverySite(double one, double other, bool differs)
    {
        ImpedanceReport report = Report("site\tpair\tkohm\n" + Star("brow", 2, 2, one) + Star("eye", 2, 2, other));

        Assert.Equal(differs ? ["ground-differs"] : [], Codes(report), StringComparer.Ordinal);
        Assert.Equal(one, report.Ground!.Value.LeastKohm, 9);
        Assert.Equal(other, report.Ground.Value.MostKohm, 9);
    }

    [Fact]
    public void OfThreeSitesTheOddOneIsNamed()
    {
        ImpedanceReport report = Report("site\tpair\tkohm\n" + Star("brow", 2, 2, 2) + Star("cheek", 2, 2, 2) + Star("eye", 1.5, 1.5, 3));

        Assert.Equal(["eye"], Assert.Single(report.Warnings).Sites, StringComparer.Ordinal);
        Assert.Equal([ImpedanceGrade.Good, ImpedanceGrade.Good, ImpedanceGrade.Doubtful], report.Sites.Select(site => site.Grade!.Value));
    }

    [Fact]
    public void AReadingThatHasToBeRedoneSaysNothingOfTheGround() =>
        Assert.Equal([], Codes(Report("site\tpair\tkohm\n" + Star("brow", 24, 24, 1) + Star("eye", 2, 2, 3))), StringComparer.Ordinal);

    /// <summary>Contacts of 2 and 3 kΩ: 5 across. Below 2.5 something joins them; without the contacts, up to 1 does.</summary>
    [Theory]
    [InlineData(5, true, false)]
    [InlineData(2.5, true, false)]
    [InlineData(2.4, true, true)]
    [InlineData(1.1, false, false)]
    [InlineData(1.0, false, true)]
    public void AReadingAcrossShowsWhatJoinsTwoSites(double kohm, bool withContacts, bool isJoined)
    {
        string contacts = withContacts ? Star("cheek", 1, 2, 1.5) + Star("eye", 3, 1, 1.5) : "eye\ta-b\t4\n";
        ImpedanceReport report = Report(FormattableString.Invariant($"site\tpair\tkohm\n{contacts}cheek\tcheek.b-eye.a\t{kohm}\n"), Face);

        Assert.Equal(withContacts ? 5 : null, Assert.Single(report.Across).ExpectedKohm);
        Assert.Equal(isJoined, Codes(report).Contains("sites-joined", StringComparer.Ordinal));
        Assert.Equal(isJoined, report.Site("eye")!.Grade == ImpedanceGrade.Doubtful);
        Assert.Empty(report.NotReadAcross);
    }

    [Fact]
    public void NeighboursThatWereNotReadAcrossAreSaid() =>
        Assert.Equal(("cheek", "eye"), Assert.Single(Report("site\tpair\tkohm\n" + Star("cheek", 1, 1, 1), Face).NotReadAcross));

    [Fact]
    public void WhatWasNotReadIsNotAvailableAndNeverGood()
    {
        ImpedanceReport report = Report("site\tpair\tkohm\ncheek\ta-b\t3\nbrow\ta-b\t30\n", Face);

        Assert.Equal([null, ImpedanceGrade.Redo, null], report.Sites.Select(site => site.Grade));
        Assert.Null(Report("site\tpair\tkohm\ncheek\ta-b\t3\n", Face).Grade);
        Assert.Equal(
            ["not read: C-1 to ground, C-2 to ground", "not read: a to ground, b to ground", "no reading"], report.Warnings.Select(warning => warning.Seen), StringComparer.Ordinal);
        Assert.All(report.Sites, site => Assert.Null(site.Solved));
    }

    [Fact]
    public void ReadingsOfTwoPhasesAreNotSolvedTogether()
    {
        ImpedanceReport report = Report("site\tpair\tkohm\tphase\ncheek\ta-b\t3\tbefore\ncheek\ta-ground\t3\tbefore\ncheek\tb-ground\t3\tprepared again\n");

        Assert.Null(report.Sites[0].Solved);
        Assert.Equal(["not-together"], Codes(report), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("10:15", true)]
    [InlineData("10:16", false)]
    public void ReadingsFarApartAreNotSolvedTogether(string later, bool isSolved)
    {
        ImpedanceReport report = Report($"site\tpair\tkohm\ttime\ncheek\ta-b\t3\t{later}\ncheek\ta-ground\t3\t10:05\ncheek\tb-ground\t3\t10:06\n");

        Assert.Equal(isSolved, report.Sites[0].Solved is not null);
    }

    [Fact]
    public void WaitingHasATime()
    {
        const string wait = "cheek\ta-b\t8\t2026-03-12T23:57\tbefore\ncheek\ta-ground\t3\t2026-03-12T23:58\tbefore\n";
        ImpedanceReport report = Report(Header + wait);

        Assert.True(report.MeasureAgain);
        Assert.Equal("2026-03-13T00:03", report.MeasureAgainAt.ToString());
        Assert.Equal("00:03", report.MeasureAgainAt!.Value.Clock);
    }

    [Fact]
    public void WithoutTimesThereIsOnlyAWhile()
    {
        ImpedanceReport report = Of(8, 3, 6);

        Assert.True(report.MeasureAgain);
        Assert.Null(report.MeasureAgainAt);
    }

    [Fact]
    public void AfterTheSessionNobodyWaits()
    {
        ImpedanceReport report = Report(Header + "cheek\ta-b\t8\t10:30\tAfter\n");

        Assert.Equal((true, false, null), (report.IsAfterTheSession, report.MeasureAgain, report.MeasureAgainAt));
    }

    [Fact]
    public void TheCourseGoesFromTheFirstReadingToTheLatest()
    {
        ImpedanceReport report = Report(Header + "cheek\ta-b\t10\t10:00\tbefore\ncheek\ta-b\t8\t10:05\tbefore\ncheek\ta-b\t7.5\t10:10\tbefore\n");
        ImpedanceCourse course = report.Sites[0][ImpedancePair.AToB].Course!;

        Assert.Equal((3, 10, 7.5, -25, 10), (course.Readings.Length, course.First.Kohm, course.Latest.Kohm, course.ChangePercent, course.MinutesSinceReference));
        Assert.False(course.HasDrifted);
    }

    [Theory]
    [InlineData(3, 6, false)]
    [InlineData(3, 6.1, true)]
    [InlineData(0.5, 1.4, false)]
    [InlineData(10, 5, false)]
    [InlineData(10, 4.9, true)]
    public void WhatDoublesOrHalvesHasDrifted(double before, double after, bool hasDrifted)
    {
        ImpedanceReport report = Report(FormattableString.Invariant($"{Header}cheek\ta-b\t{before}\t10:00\tbefore\ncheek\ta-b\t{after}\t10:25\tafter\n"));

        Assert.Equal(hasDrifted, Codes(report).Contains("drifted", StringComparer.Ordinal));
    }

    [Fact]
    public void ASiteThatWasPreparedAgainHasNotDrifted()
    {
        ImpedanceReport report = Report(Header + "cheek\ta-b\t30\t10:00\tbefore\ncheek\ta-b\t4\t10:05\tprepared again\ncheek\ta-b\t3\t10:25\tafter\n");

        Assert.DoesNotContain("drifted", Codes(report), StringComparer.Ordinal);
        Assert.Equal((30, 4), (report.Sites[0][ImpedancePair.AToB].Course!.First.Kohm, report.Sites[0][ImpedancePair.AToB].Course!.Reference!.Kohm));
    }

    [Theory]
    [InlineData("10:14", false)]
    [InlineData("10:15", true)]
    public void WaitingEndsSomeDay(string time, bool isOver) => Assert.Equal(
        isOver, Codes(Report($"{Header}cheek\ta-b\t8\t10:00\tbefore\ncheek\ta-b\t7\t{time}\tbefore\n")).Contains("not-settling", StringComparer.Ordinal));

    [Theory]
    [InlineData(100, 480, true)]
    [InlineData(99, 480, false)]
    public void OhmsThatCouldBeKiloohmsAreDoubted(double one, double other, bool isDoubted)
    {
        ImpedanceReport report = Report(FormattableString.Invariant($"site\tpair\tkohm\ncheek\ta-b\t{one}\ncheek\ta-ground\t{other}\n"));

        Assert.Equal(isDoubted, Codes(report).Contains("unit-in-doubt", StringComparer.Ordinal));
        Assert.Equal(480, report.Sites[0][ImpedancePair.AToGround].Kohm);
    }

    [Fact]
    public void TheOrderOfLinesDoesNotMatterWhenTheyHaveTimes()
    {
        string[] lines =
        [
            "cheek\ta-b\t8\t10:00\tbefore", "cheek\ta-ground\t3\t10:01\tbefore", "cheek\tb-ground\t6\t10:02\tbefore", "cheek\ta-b\t7\t10:05\tbefore",
            "eye\ta-b\t2\t10:03\tbefore", "eye\ta-ground\t9\t10:03\tbefore", "eye\tb-ground\t8\t10:04\tbefore", "eye\teye.a-cheek.b\t0.4\t10:06\tbefore",
        ];
        string[] turned = [.. Enumerable.Range(0, lines.Length).Select(shift => Told(lines.Skip(shift).Concat(lines.Take(shift)))), Told(lines.Reverse())];

        Assert.All(turned, told => Assert.Equal(turned[0], told));
        Assert.Contains("sites-joined", turned[0], StringComparison.Ordinal);
    }

    [Fact]
    public void ReadingsOfSeveralRecordingsAreNotMixed() => Assert.Throws<ArgumentException>(
        () => Report("recording\tsite\tpair\tkohm\nK1\tcheek\ta-b\t3\nK2\tcheek\ta-b\t3\n"));

    [Fact]
    public void WithoutReadingsNothingIsAvailable()
    {
        ImpedanceLog log = Read("recording\tsite\tpair\tkohm\nK1\tcheek\ta-b\t3\n", Face).For("K2");
        ImpedanceReport report = ImpedanceReport.Of(log, Face);

        Assert.All(report.Sites, site => Assert.Null(site.Grade));
        Assert.Null(report.Grade);
        Assert.Empty(ImpedanceReport.Of(log, StudySetup.Empty).Sites);
    }

    private static string Star(string site, double a, double b, double ground) => string.Create(
        CultureInfo.InvariantCulture, $"{site}\ta-b\t{a + b}\n{site}\ta-ground\t{a + ground}\n{site}\tb-ground\t{b + ground}\n");

    private static string Told(IEnumerable<string> lines)
    {
        ImpedanceReport report = Report(Header + string.Join('\n', lines) + "\n", Face);
        IEnumerable<string> sites = report.Sites.Select(site => string.Create(
            CultureInfo.InvariantCulture,
            $"{site.Name} {site.Grade} {site.Solved} {string.Join(' ', site.Pairs.Select(pair => FormattableString.Invariant($"{pair.Kohm} {pair.Time}")))}"));
        return string.Join('\n', [.. sites, .. report.Warnings.Select(warning => $"{ImpedanceCodes.Of(warning.Code)} {warning.Seen}"), report.MeasureAgainAt.ToString()!]);
    }
}
