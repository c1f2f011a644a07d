using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Decisions;
using ChannelAudit.Lists;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Raters;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Tests.Output;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Raters;

/// <summary>Labels of invented people on an invented audit: day1+p07's cheek is rejected in trials 3 to 5, questionable else; its mains there are 15, 16 and 17 µV.</summary>
public sealed class RaterStudyTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    /// <summary>By hand: of six trials A calls 3 and 4 bad, 5 unsure, the rest good; computed are reject, reject, reject and three questionable.</summary>
    [Fact]
    public void TheCriteriaAreHeldAgainstARater()
    {
        RatedSet set = Assert.Single(Study(Labels("A", "cheek", "ggbbug")).Sets);
        RaterPair pair = Assert.Single(set.Pairs);

        Assert.Equal((RatedSet.Criteria, "A", 6), (pair.A, pair.B, pair.Table.Total));
        Assert.Equal((2, 1, 3), (pair.Table.Count(2, 2), pair.Table.Count(2, 1), pair.Table.Count(1, 0)));
        Assert.Equal(
            new[]
            {
                (Grade.Reject, Grade.Reject, new DetectionCounts(2, 0, 1, 3)), (Grade.Questionable, Grade.Reject, new DetectionCounts(2, 0, 4, 0)),
                (Grade.Questionable, Grade.Questionable, new DetectionCounts(3, 0, 3, 0)),
            },
            set.Detections.Select(one => (one.CalledFrom, one.TrueFrom, one.Counts)));
    }

    [Fact]
    public void RatersAreHeldAgainstEachOtherOverWhatBothJudged()
    {
        RatedSet set = Assert.Single(Study([.. Labels("B", "cheek", "gbb"), .. Labels("A", "cheek", "ggbb"), .. Labels("C", "brow", "gg")]).Sets);

        Assert.Equal(["A", "B", "C"], set.Raters.AsEnumerable(), StringComparer.Ordinal);
        Assert.Equal(
            new[] { ("(criteria)", "A", 4L), ("(criteria)", "B", 3), ("(criteria)", "C", 2), ("A", "B", 3), ("A", "C", 0), ("B", "C", 0) },
            set.Pairs.Select(pair => (pair.A, pair.B, pair.Table.Total)));
        Assert.Equal("nothing was rated by both", set.Pairs[4].Table.Kappa().Undefined);
        Assert.Equal((1, 1, 1), (set.Pairs[3].Table.Count(0, 0), set.Pairs[3].Table.Count(0, 2), set.Pairs[3].Table.Count(2, 2)));
    }

    /// <summary>Three say good, bad, bad: bad. Two say good, bad: nothing.</summary>
    [Fact]
    public void PeopleTogetherAreTheMiddleOfTheirLabels()
    {
        RatedSet set = Assert.Single(Study([.. Labels("A", "cheek", "gg"), .. Labels("B", "cheek", "bb"), .. Labels("C", "cheek", "b")]).Sets);

        Assert.Equal((2, 1), (set.Count, set.Undecided));
        Assert.Equal(new DetectionCounts(0, 1, 0, 0), set.Detections.First(one => string.Equals(one.Against, RatedSet.People, StringComparison.Ordinal)).Counts);
    }

    /// <summary>Mains tell A's two rejects (15 and 16 µV) from the rest but for the third at 17 µV: of 2 x 4 pairs 6 are larger.</summary>
    [Fact]
    public void AMeasureHasItsCurveItsAreaAndTheLimitInForce()
    {
        MeasureAgainstPeople curve = Curve(Study(Labels("A", "cheek", "ggbbug")), "line_rms");

        Assert.Equal(6.0 / 8, curve.Area, 12);
        Assert.Equal((5, new DetectionCounts(2, 0, 1, 3)), (curve.LimitInForce!.Value, curve.AtLimitInForce!.Value));
        Assert.Equal(
            new[] { (null, new DetectionCounts(0, 2, 0, 4)), (17, new DetectionCounts(0, 2, 1, 3)), (16, new DetectionCounts(1, 1, 1, 3)), (15, new DetectionCounts(2, 0, 1, 3)), ((double?)0.25, new DetectionCounts(2, 0, 4, 0)) },
            curve.Points.Select(point => (point.Limit, point.Counts)));
        Assert.Null(curve.Best);
    }

    [Fact]
    public void NoLimitIsNamedBelowTheMinimumAndTheCautionStandsBesideEveryOneThatIs()
    {
        RaterStudy few = Study(Labels("A", "cheek", "ggbbug"));
        RaterStudy many = Many(40, bad: 20);

        Assert.Contains("no limit is named: it takes 20 labels of each kind, here are 2 reject and 4 other", RatersText.Render(few, "labels.tsv"), StringComparison.Ordinal);
        Assert.DoesNotContain("looks better on these labels than it is", RatersText.Render(few, "labels.tsv"), StringComparison.Ordinal);
        Assert.Equal((21, new DetectionCounts(20, 0, 0, 20)), (Curve(many, "line_rms").Best!.Value.Limit, Curve(many, "line_rms").Best!.Value.Counts));
        Assert.Contains("looks better on these labels than it is", RatersText.Render(many, "labels.tsv"), StringComparison.Ordinal);
        Assert.Contains("It rests on 20 labels reject and 20 other.", RatersText.Render(many, "labels.tsv").Replace("\n  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Null(Curve(Many(40, bad: 19), "line_rms").Best);
    }

    [Fact]
    public void AMeasureThatIsBadBelowItsLimitIsTurnedRound()
    {
        // headroom: the lower the worse.
        RaterStudy study = Many(40, bad: 20, measure: "headroom", value: trial => 100 - trial);
        MeasureAgainstPeople curve = Curve(study, "headroom");

        Assert.Equal(1, curve.Area, 12);
        Assert.Equal(79, curve.Best!.Value.Limit);
        Assert.Equal(new DetectionCounts(20, 0, 0, 20), curve.Best.Value.Counts);
    }

    [Fact]
    public void MeasuresWithoutAValueAreLeftOutAndCounted()
    {
        RaterStudy study = Study(Labels("A", "cheek", "ggbbug"));

        Assert.DoesNotContain(study.Sets[0].Curves, curve => curve.Measure.Name is "narrow_hz" or "level_trend");
        Assert.Equal(0, Curve(study, "line_rms").LeftOut);
    }

    [Fact]
    public void WholeChannelsAreCountedApartFromTrials()
    {
        RaterStudy study = Study([.. Labels("A", "cheek", "gb"), Label("A", "cheek", null, Grade.Reject), Label("A", null, null, Grade.Pass, line: 9)]);

        Assert.Equal(new[] { (RatedKind.Trials, 2), (RatedKind.Channels, 3) }, study.Sets.Select(set => (set.Kind, set.Count)));
        Assert.Equal(1, study.Replaced);
        Assert.Equal((1, 1, 1), (study.Sets[1].Pairs[0].Table.Count(2, 0), study.Sets[1].Pairs[0].Table.Count(1, 0), study.Sets[1].Pairs[0].Table.Count(0, 0)));
    }

    [Fact]
    public void LabelsOfNothingAreListedWithTheirCause()
    {
        RaterStudy study = Study([.. Labels("A", "cheek", "gb"), Label("A", "chek", "1", Grade.Pass, 7), Label("A", "cheek", "7", Grade.Pass, 8)]);

        Assert.Equal([7, 8], study.Unmatched.Select(one => one.Label.Place.Line));
        Assert.Contains("line 7, A: the recording has no channel \"chek\"; did you mean \"cheek\"?\n", RatersText.Render(study, "labels.tsv"), StringComparison.Ordinal);
    }

    /// <summary>Of six decisions one was made with the verdict in sight, one was taken back, one is about other bytes, and one about a trial that is another one now.</summary>
    [Fact]
    public void BlindDecisionsAreLabelsAndOthersAreNot()
    {
        SampleResults.Run().Write(_folder.Path, figures: null, CancellationToken.None);
        Decision[] drafts =
        [
            Draft("cheek", 3) with { Blind = true }, Draft("cheek", 4), Draft("cheek", 5) with { Blind = true },
            Draft("cheek", 1) with { Blind = true, RecordingSha256 = new string('9', 64) }, Draft("brow", null) with { Blind = true },
            Draft("cheek", 6) with { Blind = true, Trial = new DecidedTrial(6, 1, 3, "another one") },
        ];
        LedgerWriter.Append(_folder.Path, _ => drafts, new FixedClock(), CancellationToken.None);
        LedgerWriter.Withdraw(_folder.Path, 3, "R. Viewer", "a slip", "decide", new FixedClock(), CancellationToken.None);

        (ImmutableArray<GivenLabel> labels, int stale) = BlindDecisions.Of(StoredAudit.Open(_folder.Path));

        Assert.Equal(
            new[] { ("cheek", (int?)3, "R. Viewer", Grade.Pass), ("brow", null, "R. Viewer", Grade.Pass) },
            labels.Select(label => (label.Place.Channel!, label.Place.TrialNumber, label.Rater, label.Grade)));
        Assert.Equal(2, stale);
        Assert.Equal([1, 1], RaterStudy.Of(StoredAudit.Open(_folder.Path), labels, CancellationToken.None).Sets.Select(set => set.Count));
    }

    [Fact]
    public void TablesHaveARowForEachPairCallMeasureAndPoint()
    {
        RaterStudy study = Study([.. Labels("=A", "cheek", "ggbbug"), .. Labels("B", "cheek", "bbbbgg")]);
        Dictionary<string, string[]> tables = RaterTables.All(study).ToDictionary(table => table.Name, table => Encoding.UTF8.GetString(table.Bytes).TrimEnd('\n').Split('\n'), StringComparer.Ordinal);
        RatedSet set = study.Sets[0];

        Assert.Equal((set.Pairs.Length, set.Detections.Length, set.Curves.Length, set.Curves.Sum(curve => curve.Points.Length)), (
            tables["agreement.tsv"].Length - 1, tables["detection.tsv"].Length - 1, tables["limits.tsv"].Length - 1, tables["curves.tsv"].Length - 1));
        Assert.All(tables.Values, lines => Assert.Single(lines.Select(line => line.Split('\t').Length).Distinct()));
        Assert.Contains(tables["agreement.tsv"], line => line.StartsWith("trials\t(criteria)\t'=A\t6\t", StringComparison.Ordinal));
        Assert.All(tables["limits.tsv"].Skip(1), line => Assert.Contains("\tno limit is named: ", line, StringComparison.Ordinal));
    }

    [Fact]
    public void ThePictureSaysWhatItRestsOnAndNoTextLeavesIt()
    {
        RatedSet set = Many(40, bad: 20).Sets[0];
        foreach (FigureSize size in new[] { FigureSize.Full, FigureSize.Small })
        {
            var picture = RaterCurves.Compose(set, size);
            string[] texts = [.. picture.Labels.Select(label => label.Text)];

            Assert.Contains(texts, text => text.StartsWith("line_rms: area 1.00 (20 reject", StringComparison.Ordinal));
            Assert.Contains(texts, text => text.StartsWith("best here \u2265 21", StringComparison.Ordinal));
            Assert.All(picture.Labels, label => Assert.True(label.Area.Left >= 0 && label.Area.Right <= size.Width && label.Area.Top >= 0 && label.Area.Bottom <= size.Height, label.Text));
        }

        Assert.Equal(RaterCurves.Render(set, FigureSize.Small), RaterCurves.Render(set, FigureSize.Small));
    }

    private static Decision Draft(string channel, int? trial) => new()
    {
        By = "R. Viewer",
        Action = DecisionAction.Decide,
        Recording = "day1+p07",
        Channel = channel,
        Trial = trial is { } number && SampleResults.Faulty().Trials[number - 1] is { } about ? new DecidedTrial(about.Number, about.OnsetS, about.DurationS, about.Label) : null,
        Verdict = Grade.Pass,
        Reason = "looked at the trace",
        Computed = [new ComputedVerdict(channel, Grade.Reject, ["line-noise"])],
        RecordingSha256 = SampleResults.Faulty().Sha256,
        CriteriaSha256 = SampleResults.CriteriaSha256,
        Origin = "decide",
    };

    private static MeasureAgainstPeople Curve(RaterStudy study, string measure) =>
        study.Sets[0].Curves.Single(curve => string.Equals(curve.Measure.Name, measure, StringComparison.Ordinal));

    private static GivenLabel Label(string rater, string? channel, string? trial, Grade grade, int line = 2) => new(new ListedPlace(line, "day1+p07", channel, trial), rater, grade);

    /// <summary>Labels of trials 1, 2, ...: g good, u unsure, b bad.</summary>
    private static ImmutableArray<GivenLabel> Labels(string rater, string channel, string letters) =>
        [.. letters.Select((letter, place) => Label(rater, channel, (place + 1).Plain(), letter switch { 'g' => Grade.Pass, 'u' => Grade.Questionable, _ => Grade.Reject }, place + 2))];

    private RaterStudy Study(ImmutableArray<GivenLabel> labels)
    {
        SampleResults.Run().Write(_folder.Path, figures: null, CancellationToken.None);
        return RaterStudy.Of(StoredAudit.Open(_folder.Path), labels, CancellationToken.None);
    }

    /// <summary>So many trials of one channel, the last of them bad; a measure grows with the trial's number.</summary>
    private RaterStudy Many(int trials, int bad, string measure = "line_rms", Func<int, double>? value = null)
    {
        RecordingResult large = SampleResults.Large(trials) with { Id = "day1+p07", Path = "day1/p07.edf" };
        CellResult[] cells = [.. Enumerable.Range(1, trials).Select(trial =>
        {
            CellResult cell = SampleResults.Cell(trial, Grade.Pass);
            return cell with
            {
                Measures = [.. cell.Measures.Select(one => string.Equals(one.Value.Measure, measure, StringComparison.Ordinal) ? one with { Value = one.Value with { Value = value?.Invoke(trial) ?? trial } } : one)],
            };
        })];
        SampleResults.Run(large with { Channels = [large.Channels[0] with { Cells = [.. cells] }] }).Write(_folder.Path, figures: null, CancellationToken.None);
        string letters = new string('g', trials - bad) + new string('b', bad);
        return RaterStudy.Of(StoredAudit.Open(_folder.Path), Labels("A", "cheek", letters), CancellationToken.None);
    }

    private sealed class FixedClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 3, 12, 10, 5, 0, TimeSpan.Zero);
    }
}
