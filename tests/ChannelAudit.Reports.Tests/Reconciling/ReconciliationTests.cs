using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Findings;
using ChannelAudit.Lists;
using ChannelAudit.Reports.Reconciling;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Tests.Output;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Reconciling;

/// <summary>A list of exclusions against an invented audit: day1+p07 has a rejected cheek (trials 3 to 5 reject, 1, 2 and 6 questionable), a questionable
/// brow whose trials pass, and an eye that passes but for a questionable trial 6.</summary>
public sealed class ReconciliationTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    public static TheoryData<string, string?, string?, Grade, ReconcileAnswer, Grade> Answers { get; } = new()
    {
        { "day1+p07", "cheek", null, Grade.Reject, ReconcileAnswer.Supported, Grade.Reject },
        { "day1/p07.edf", "Cheek", "3", Grade.Reject, ReconcileAnswer.Supported, Grade.Reject },
        { "p07.edf", "EMG cheek", "1", Grade.Reject, ReconcileAnswer.Partly, Grade.Questionable },
        { "day1+p07", "brow", null, Grade.Reject, ReconcileAnswer.Partly, Grade.Questionable },
        { "day1+p07", "brow", "3", Grade.Reject, ReconcileAnswer.NotSupported, Grade.Pass },
        { "day1+p07", "eye", null, Grade.Reject, ReconcileAnswer.Partly, Grade.Pass },
        { "day1+p07", null, "4", Grade.Reject, ReconcileAnswer.Partly, Grade.Reject },
        { "day1+p07", null, null, Grade.Reject, ReconcileAnswer.Partly, Grade.Reject },
        { "day1+p08", null, null, Grade.Reject, ReconcileAnswer.NotSupported, Grade.Pass },
        { "day1+p07", "cheek", "3", Grade.Questionable, ReconcileAnswer.Partly, Grade.Reject },
        { "day1+p07", "cheek", "3", Grade.Pass, ReconcileAnswer.NotSupported, Grade.Reject },
        { "day1+p07", "brow", "3", Grade.Pass, ReconcileAnswer.Supported, Grade.Pass },
    };

    [Theory]
    [MemberData(nameof(Answers))]
    public void ALineIsSupportedPartlyOrNotAtAll(string recording, string? channel, string? trial, Grade declared, ReconcileAnswer answer, Grade verdict)
    {
        ReconciledRow row = Rows(Line(2, recording, channel, trial, declared)).Rows.Single(one => one.Line is not null);

        Assert.Equal((answer, verdict, verdict), (row.Answer, row.Verdict!.Value, row.Final!.Value));
    }

    [Fact]
    public void ASupportedTrialShowsItsOwnNumberAndTheLimit()
    {
        ReconciledRow row = Rows(Line(2, "day1+p07", "cheek", "5")).Rows.Single(one => one.Line is not null);

        Assert.Equal(new Evidence("line_rms", 17, "uV", 5), row.Evidence);
        Assert.Equal((ReasonCode.LineNoise, "happy", 1, 1), (row.EvidenceReason, row.Condition, row.Cells.Total, row.Cells.Reject));
    }

    [Fact]
    public void AWholeChannelShowsTheChannelsNumberAndItsTrials()
    {
        ReconciledRow row = Rows(Line(2, "day1+p07", "cheek", null)).Rows.Single(one => one.Line is not null);

        Assert.Equal(new Evidence("line_rms", 14.2449, "uV", 5), row.Evidence);
        Assert.Equal((6, 3, 3, 0), (row.Cells.Total, row.Cells.Reject, row.Cells.Questionable, row.Cells.Pass));
        Assert.Equal(new[] { ReasonCode.Drift }, row.NotAssessed.AsEnumerable(), StringComparer.Ordinal);
    }

    [Fact]
    public void EveryRejectThatIsNotDeclaredIsRejectedButKept()
    {
        (Reconciliation found, ReconciledRow[] rows) = Rows(Line(2, "day1+p07", "cheek", "4"));

        Assert.Equal(
            new[] { ("cheek", null), ("cheek", "3"), ("cheek", "5") },
            rows.Where(row => row.Answer == ReconcileAnswer.RejectedButKept).Select(row => (row.Channel!, row.Trial)));
        Assert.Equal((1, 2), (found.KeptChannels, found.KeptTrials));
        Assert.False(found.IsSame);
    }

    [Fact]
    public void AListThatNamesTheRejectsAndNothingElseIsTheSame()
    {
        (Reconciliation found, ReconciledRow[] rows) = Rows(Line(2, "day1+p07", "cheek", null));

        Assert.True(found.IsSame);
        Assert.Single(rows);
        Assert.Contains("No difference: every line is supported", ReconcileText.Render(found), StringComparison.Ordinal);
    }

    [Fact]
    public void AChannelWhoseTrialsAreAllDeclaredIsNotKept()
    {
        (Reconciliation found, _) = Rows([.. Enumerable.Range(1, 6).Select(trial => Line(trial + 1, "day1+p07", "cheek", trial.Plain()))]);

        Assert.Equal((0, 0), (found.KeptChannels, found.KeptTrials));
        Assert.Equal((3, 3), (found.Count(ReconcileAnswer.Supported), found.Count(ReconcileAnswer.Partly)));
    }

    /// <summary>By hand: 42 cells of three recordings, 3 rejects, of which 2 are declared with 1 that passes: (2, 1; 1, 38).</summary>
    [Fact]
    public void TheTwoWayTableAndKappaAreThoseCountedByHand()
    {
        (Reconciliation found, _) = Rows(Line(2, "day1+p07", "cheek", "3"), Line(3, "day1+p07", "cheek", "4"), Line(4, "day1+p07", "brow", "4"));
        double observed = 40.0 / 42;
        double expected = ((3.0 * 3) + (39 * 39)) / (42 * 42);

        Assert.Equal((2, 1, 1, 38), (found.Cells.Count(0, 0), found.Cells.Count(0, 1), found.Cells.Count(1, 0), found.Cells.Count(1, 1)));
        Assert.Equal((observed - expected) / (1 - expected), found.Cells.Kappa().Kappa!.Value, 12);
        Assert.Equal((0, 0, 1, 6), (found.Channels.Count(0, 0), found.Channels.Count(0, 1), found.Channels.Count(1, 0), found.Channels.Count(1, 1)));
        Assert.Contains("kappa 0.64 (95 % interval", ReconcileText.Render(found), StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutAnyExclusionOrRejectKappaIsNotDefinedAndSaysWhy()
    {
        SampleResults.Run(SampleResults.Clean("x")).Write(_folder.Path, figures: null, CancellationToken.None);
        Reconciliation found = Reconciliation.Of(StoredAudit.Open(_folder.Path), new ExclusionList("list.tsv", false, []), _ => { }, CancellationToken.None);

        Assert.True(found.IsSame);
        Assert.Null(found.Cells.Kappa().Kappa);
        Assert.Contains("Cohen's kappa is not defined: both gave the same one answer throughout", ReconcileText.Render(found), StringComparison.Ordinal);
    }

    [Fact]
    public void GradesOfTheListAreHeldAgainstComputedOnesWithWeights()
    {
        (Reconciliation found, ReconciledRow[] rows) = Rows(
            hasVerdicts: true, Line(2, "day1+p07", "cheek", null), Line(3, "day1+p07", "brow", null, Grade.Questionable), Line(4, "day1+p07", "eye", "1", Grade.Pass));

        Assert.Equal((3, 3, 0, 6, 0, 1, 29), (
            found.Grades.Count(2, 2), found.Grades.Count(2, 1), found.Grades.Count(2, 0), found.Grades.Count(1, 0), found.Grades.Count(1, 1), found.Grades.Count(0, 1), found.Grades.Count(0, 0)));
        Assert.All(rows, row => Assert.Equal(ReconcileAnswer.Supported, row.Answer));
        Assert.Contains("With linear weights, kappa ", ReconcileText.Render(found), StringComparison.Ordinal);
    }

    [Fact]
    public void NamesThatDoNotExistAreListedWithTheNearest()
    {
        (Reconciliation found, ReconciledRow[] rows) = Rows(Line(2, "day1+p70", "cheek", null), Line(3, "day1+p07", "chek", "1"), Line(4, "day1+p07", "cheek", "9"), Line(5, "day1+p07", "cheek", "x"));

        Assert.Equal(
            new[]
            {
                "the audit has no recording \"day1+p70\"; did you mean \"day1+p07\"?", "the recording has no channel \"chek\"; did you mean \"cheek\"?",
                "there is no trial 9; the recording has 6", "\"x\" is no number of a trial; trial 3 may be written 3, 3.0 or 3,0",
            },
            rows.Where(row => row.Answer == ReconcileAnswer.NoMatch).Select(row => row.Note!),
            StringComparer.Ordinal);
        Assert.Equal(4, found.Count(ReconcileAnswer.NoMatch));
        Assert.All(rows.Where(row => row.Answer == ReconcileAnswer.NoMatch), row => Assert.Null(row.Verdict));
    }

    [Theory]
    [InlineData(Reconciliation.MostShown, false)]
    [InlineData(Reconciliation.MostShown + 1, true)]
    public void ThatLinesWereLeftOutIsSaidOnlyWhenSomeWere(int lines, bool isSaid)
    {
        DeclaredExclusion[] unknown = [.. Enumerable.Range(3, lines - 1).Select(line => Line(line, "nobody", "cheek", null))];
        (Reconciliation found, ReconciledRow[] rows) = Rows([Line(2, "day1+p07", "cheek", null), .. unknown]);

        Assert.Equal((lines, Reconciliation.MostShown), (rows.Length, found.Shown.Length));
        Assert.Equal(isSaid, ReconcileText.Render(found).Contains("Only the first 200 lines are shown", StringComparison.Ordinal));
    }

    [Fact]
    public void HostileWordsStayInTheirCellsAndOnTheirLines()
    {
        DeclaredExclusion hostile = Line(2, "=1+1\u001b[31m", "a\tb", "\"3") with { Reason = "=cmd\u202E\nx" };
        (Reconciliation found, ReconciledRow[] rows) = Rows(hostile);

        string line = Encoding.UTF8.GetString(ReconcileTsv.Rows([.. rows.Where(row => row.Line == 2)]));
        string text = ReconcileText.Render(found);
        Assert.Contains("\t'=1+1\uFFFD[31m\t", line, StringComparison.Ordinal);
        Assert.Contains("\"'=cmd\u202E\nx\"", line, StringComparison.Ordinal);
        Assert.DoesNotContain("\u001b", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\u202E", text, StringComparison.Ordinal);
        Assert.Contains("the list says: =cmd??x", text, StringComparison.Ordinal);
    }

    private static DeclaredExclusion Line(int line, string recording, string? channel, string? trial, Grade verdict = Grade.Reject) =>
        new(new ListedPlace(line, recording, channel, trial), null, verdict);

    private (Reconciliation Found, ReconciledRow[] Rows) Rows(params DeclaredExclusion[] lines) => Rows(hasVerdicts: false, lines);

    private (Reconciliation Found, ReconciledRow[] Rows) Rows(bool hasVerdicts, params DeclaredExclusion[] lines)
    {
        SampleResults.Run().Write(_folder.Path, figures: null, CancellationToken.None);
        List<ReconciledRow> rows = [];
        Reconciliation found = Reconciliation.Of(
            StoredAudit.Open(_folder.Path), new ExclusionList("list.tsv", hasVerdicts, [.. lines]), some => rows.AddRange(some), CancellationToken.None);
        return (found, [.. rows]);
    }
}
