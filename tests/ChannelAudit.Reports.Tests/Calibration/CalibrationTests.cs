using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Calibration.Report;
using ChannelAudit.Calibration.Running;
using ChannelAudit.Calibration.Study;
using ChannelAudit.Criteria;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Calibration;

/// <summary>The published calibration is what the program gives today, and it reaches what was aimed at.</summary>
public sealed class CalibrationTests
{
    private static readonly ImmutableArray<Row> Rows = [.. File.ReadLines(RepositoryRoot.Fixture("../docs/" + CalibrationFolder.Table)).Skip(1).Select(Row.Of)];

    /// <summary>A few points of the study run anew; a change of the engine that moves them must run the study again.</summary>
    [Theory]
    [InlineData("line-noise", 5)]
    [InlineData("bridge-one", 1)]
    [InlineData("noise-floor", 3)]
    [InlineData("blinks", 350)]
    public void APublishedPointIsWhatTheProgramGives(string name, double severity)
    {
        Row published = Rows.Single(row => row.Is(MeasuredPoint.First, name) && row.Severity.Equals(severity));
        StudyPoint point = StudyRunner.PointsOf(FaultSweeps.All.Concat(Confusers.All)).Single(one =>
            string.Equals(one.Sweep.Name, name, StringComparison.Ordinal) && one.Severity.Equals(severity));

        PointCount count = StudyRunner.Run([point], SeedSet.Judging, published.Recordings, [DefaultCriteria.All], () => { })[0][0];

        Assert.Equal(published.Text + "\n", CurvesTable.Row(new MeasuredPoint(MeasuredPoint.First, point, count)));
    }

    [Fact]
    public void NothingCleanIsRejectedAndHardlyAnythingQuestionable()
    {
        Row[] clean = [.. Rows.Where(row => row.Is(MeasuredPoint.First) && Confusers.All.Any(sweep => row.Is(MeasuredPoint.First, sweep.Name)))];

        Assert.True(clean.Sum(row => row.Other) >= 5000);
        Assert.Equal(0, clean.Sum(row => row.OtherRejected));
        Assert.True(clean.Sum(row => row.OtherQuestionable) <= 0.01 * clean.Sum(row => row.Other));
    }

    [Fact]
    public void GrossFaultsAreFoundForTheRightReason()
    {
        string[] missed =
        [
            .. FaultSweeps.All.Where(sweep => !sweep.Gross.IsEmpty).Where(sweep =>
            {
                Row[] gross = [.. sweep.Gross.Select(i => Rows.Single(row => row.Is(MeasuredPoint.First, sweep.Name) && row.Severity.Equals(sweep.Severities[i])))];
                int reached = gross.Sum(row => sweep.Wanted == Grade.Reject ? row.Rejected : row.Found);
                return reached < 0.99 * gross.Sum(row => row.Faulty);
            }).Select(sweep => sweep.Name),
        ];

        Assert.Empty(missed);
    }

    [Fact]
    public void EveryFaultOfTheStudyHasItsCurveOnThePage()
    {
        string page = File.ReadAllText(RepositoryRoot.Fixture("../docs/calibration.md"));

        Assert.All(FaultSweeps.All, sweep => Assert.Contains($"(calibration/{sweep.Name}.png)", page, StringComparison.Ordinal));
        Assert.All(ReasonsWithLimits(), reason => Assert.Contains($"| `{reason}` | false findings in 1000 |", page, StringComparison.Ordinal));
    }

    [Fact]
    public void MovedLimitsMoveOnTheirOwnScale()
    {
        Criterion line = ScaledCriteria.By(2).For("line-noise");
        Criterion drift = ScaledCriteria.By(2).For("drift");

        Assert.Equal(2, line.Questionable[0].Limits[0].Value);
        Assert.Equal(-10 + (20 * Math.Log10(2)), line.Questionable[0].Limits[1].Value, 12);
        Assert.Equal(25, drift.Questionable.SelectMany(set => set.Limits).Single(limit => string.Equals(limit.Measure, "headroom", StringComparison.Ordinal)).Value);
    }

    /// <summary>Wilson (1927) on recordings, not on the trials within them.</summary>
    [Fact]
    public void AnIntervalCountsRecordings()
    {
        Share share = Share.Of(80, 100, 20);

        Assert.Equal(0.8, share.Value);
        Assert.Equal(WilsonInterval.Of(16, 20), (share.Low, share.High));
        Assert.Null(Share.Of(0, 0, 20).Value);
    }

    private static IEnumerable<string> ReasonsWithLimits() => FaultSweeps.All.SelectMany(sweep => sweep.Reasons).Distinct(StringComparer.Ordinal)
        .Where(reason => DefaultCriteria.All.All.Any(criterion => string.Equals(criterion.Reason, reason, StringComparison.Ordinal)));

    private sealed record Row(string Text, ImmutableArray<string> Cells)
    {
        public double Severity => double.Parse(Cells[2], CultureInfo.InvariantCulture);

        public int Recordings => Number(3);

        public int Faulty => Number(4);

        public int Found => Number(5);

        public int Rejected => Number(6);

        public int Other => Number(7);

        public int OtherQuestionable => Number(8);

        public int OtherRejected => Number(9);

        public static Row Of(string line) => new(line, [.. line.Split('\t')]);

        public bool Is(string generator) => string.Equals(Cells[0], generator, StringComparison.Ordinal);

        public bool Is(string generator, string fault) => Is(generator) && string.Equals(Cells[1], fault, StringComparison.Ordinal);

        private int Number(int cell) => int.Parse(Cells[cell], CultureInfo.InvariantCulture);
    }
}
