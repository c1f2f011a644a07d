using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Findings.Bridges;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Verdicts;

/// <summary>From findings to verdicts: the worst wins, nothing flows back from a channel to its trials, and what could not be assessed is never silent.</summary>
public sealed class VerdictPolicyTests
{
    private static readonly VerdictPolicy Policy = new(DefaultCriteria.All);

    [Fact]
    public void WithoutAFindingATrialPasses()
    {
        CellResult cell = Cell([RuleOutcome.None("clipping"), RuleOutcome.None("drift")]);

        Assert.Equal((2, Grade.Pass), (cell.Trial, cell.Verdict));
        Assert.Empty(cell.Reasons);
        Assert.Empty(cell.NotAssessed);
        Assert.Empty(cell.Findings);
        Assert.Empty(cell.BaselineMeasures);
        Assert.Equal(JudgedCase.Cheek.Windows[1].Measures, cell.Measures.Select(one => one.Value));
    }

    [Fact]
    public void TheWorstFindingIsTheVerdictAndReasonsAreListedWorstFirst()
    {
        CellResult cell = Cell([JudgedCase.Found("line-noise", Grade.Questionable), JudgedCase.Found("drift", Grade.Reject), JudgedCase.Found("clipping", Grade.Questionable), RuleOutcome.None("pops")]);

        Assert.Equal(Grade.Reject, cell.Verdict);
        Assert.Equal(["drift", "clipping", "line-noise"], cell.Reasons, StringComparer.Ordinal);
        Assert.Equal(["line-noise", "drift", "clipping"], cell.Findings.Select(one => one.Reason), StringComparer.Ordinal);
    }

    [Fact]
    public void AFindingSaysWhereWhatAndWhy()
    {
        RuleOutcome found = JudgedCase.Found("drift", Grade.Questionable, "headroom") with { FromQuietStretches = true };
        Finding finding = Assert.Single(Cell([found]).Findings);

        Assert.Equal(("drift", Grade.Questionable, 2, 20.0, 22.0), (finding.Reason, finding.Grade, finding.Trial, finding.FromS, finding.ToS));
        Assert.Equal(("7 of it", "a cause"), (finding.Text, finding.Cause));
        Assert.Equal(["cheek"], finding.Channels, StringComparer.Ordinal);
        Assert.Equal<Evidence>(found.Evidence, finding.Evidence);
        Assert.Equal((false, true), (finding.InBaseline, finding.FromQuietStretches));
        Assert.NotNull(finding.Effect);
    }

    [Fact]
    public void AStretchOfItsOwnTakesThePlaceOfTheWindow()
    {
        Finding finding = Assert.Single(Cell([JudgedCase.Found("drift", Grade.Questionable) with { Stretch = (20.5, 21) }]).Findings);

        Assert.Equal((20.5, 21.0), (finding.FromS, finding.ToS));
    }

    [Fact]
    public void ABaselineCountsAsTheTrialDoes()
    {
        ImmutableArray<RuleOutcome> before = [JudgedCase.Found("pops", Grade.Reject, "pops") with { NotAssessed = "of the baseline" }];
        CellResult cell = Cell([RuleOutcome.None("pops")], baseline: before);
        Finding finding = Assert.Single(cell.Findings);

        Assert.Equal(Grade.Reject, cell.Verdict);
        Assert.Equal(["pops"], cell.Reasons, StringComparer.Ordinal);
        Assert.Equal((true, "before the onset: 7 of it", 18.0, 20.0), (finding.InBaseline, finding.Text, finding.FromS, finding.ToS));
        Assert.Equal(Grade.Reject, GradeOf(cell.BaselineMeasures, "pops"));
        Assert.Equal(Grade.Pass, GradeOf(cell.Measures, "pops"));

        // What could not be said of the baseline is no gap in what is known of the trial.
        Assert.Empty(cell.NotAssessed);
    }

    [Fact]
    public void BridgesAndWhatIsCarriedCountButOnlyBridgesAreFindingsOfTheTrial()
    {
        Finding bridge = JudgedCase.Carried("bridge", Grade.Questionable);
        CellResult cell = Cell([RuleOutcome.None("drift")], [bridge], carried: [JudgedCase.Carried("lead-swap", Grade.Reject)]);

        Assert.Equal(Grade.Reject, cell.Verdict);
        Assert.Equal(["lead-swap", "bridge"], cell.Reasons, StringComparer.Ordinal);
        Assert.Equal(bridge, Assert.Single(cell.Findings));
    }

    [Fact]
    public void WhatWasNotAssessedIsSaidOnceAReasonBesideAPass()
    {
        CellResult cell = Cell(
            [RuleOutcome.None("weak-response", "no task"), RuleOutcome.None("drift", "a high-pass"), RuleOutcome.None("pops")], bridgeOpen: "one channel");

        Assert.Equal(Grade.Pass, cell.Verdict);
        Assert.Equal<NotAssessed>([new NotAssessed("bridge", "one channel"), new NotAssessed("drift", "a high-pass"), new NotAssessed("weak-response", "no task")], cell.NotAssessed);
    }

    [Theory]
    [InlineData("less than 0.2 s", "less than 0.2 s")]
    [InlineData(null, "no EMG band")]
    public void WhereNothingCanBeMeasuredATrialNeverPasses(string? why, string said)
    {
        CellResult cell = Policy.Cell("cheek", JudgedCase.Trial(2), JudgedCase.Without(JudgedCase.Cheek.Windows[1], why), [], null, [], null, []);

        Assert.Equal(Grade.Questionable, cell.Verdict);
        Assert.Equal(["unusable-input"], cell.Reasons, StringComparer.Ordinal);
        Assert.Equal<NotAssessed>([new NotAssessed("unusable-input", said)], cell.NotAssessed);
    }

    [Fact]
    public void AChannelHasItsOwnFindingsAndThoseItCarries()
    {
        Finding swap = JudgedCase.Carried("lead-swap", Grade.Questionable);
        ChannelResult channel = Channel([JudgedCase.Found("drift", Grade.Reject, "headroom"), RuleOutcome.None("pops", "never asked")], carried: [swap], bridgeOpen: "alone");

        Assert.Equal(("cheek", Grade.Reject), (channel.Name, channel.Verdict));
        Assert.Equal(JudgedCase.Cheek.Channel.Channel.Label, channel.Label);
        Assert.Equal(["drift", "lead-swap"], channel.Reasons, StringComparer.Ordinal);
        Assert.Equal(2, channel.Findings.Length);
        Assert.Equal((null, "7 of it"), (channel.Findings[0].Trial, channel.Findings[0].Text));
        Assert.Equal(swap, channel.Findings[1]);
        Assert.Equal<NotAssessed>([new NotAssessed("bridge", "alone"), new NotAssessed("pops", "never asked")], channel.NotAssessed);
        Assert.Equal(Grade.Reject, GradeOf(channel.Measures, "headroom"));
        Assert.Equal((1000.0, 20.0), (channel.RateHz, channel.BandFromHz));
        Assert.NotNull(channel.Signal);
    }

    [Fact]
    public void AChannelWithoutFindingsPassesAndNamesNothing()
    {
        ChannelResult channel = Channel([RuleOutcome.None("pops")], cells: [JudgedCase.Cell(1, Grade.Pass)]);

        Assert.Equal(Grade.Pass, channel.Verdict);
        Assert.Empty(channel.Reasons);
        Assert.Empty(channel.Findings);
        Assert.Empty(channel.NotAssessed);
        Assert.Equal(JudgedCase.Cell(1, Grade.Pass), Assert.Single(channel.Cells));
    }

    // In its trials a joint may be certain and over the hour in doubt.
    [Fact]
    public void AJointGradesTheChannelAsThePairWasJudged()
    {
        PairJudgement joined = Pair(JudgedCase.Carried("bridge", Grade.Reject), Grade.Questionable);
        ChannelResult channel = Channel([], pairs: [joined, Pair(null, Grade.Reject)]);

        Assert.Equal(Grade.Questionable, channel.Verdict);
        Assert.Equal(["bridge"], channel.Reasons, StringComparer.Ordinal);
        Finding finding = Assert.Single(channel.Findings);
        Assert.Equal("depends on eye: 25 % of its amplitude gets in", finding.Effect!.Note);
    }

    [Fact]
    public void ManyBadTrialsGradeTheChannelAndNameWhy()
    {
        ImmutableArray<CellResult> cells = [.. Enumerable.Range(1, 8).Select(n => n is 3 or 4 or 6 or 7 ? JudgedCase.Cell(n, Grade.Reject, "pops") : JudgedCase.Cell(n, n == 8 ? Grade.Questionable : Grade.Pass, n == 8 ? ["drift"] : []))];
        ChannelResult channel = Channel([], cells: cells);
        Finding finding = Assert.Single(channel.Findings);

        Assert.Equal(Grade.Reject, channel.Verdict);
        Assert.Equal(["pops"], channel.Reasons, StringComparer.Ordinal);
        Assert.Equal(("pops", Grade.Reject, "4 of 8 trials are rejected, mostly for pops", "what the single trials show"), (finding.Reason, finding.Grade, finding.Text, finding.Cause));
        Assert.Equal((30.0, 72.0), (finding.FromS, finding.ToS));
        Assert.Equal<Evidence>([new Evidence("bad_share", 50, "%", 50)], finding.Evidence);
        Assert.Equal(["cheek"], finding.Channels, StringComparer.Ordinal);
        Assert.Null(finding.Trial);
    }

    [Fact]
    public void ForAQuestionableChannelAllTrialsThatDidNotPassAreCounted()
    {
        ImmutableArray<CellResult> cells = [.. Enumerable.Range(1, 8).Select(n => JudgedCase.Cell(n, n is 2 or 5 ? Grade.Reject : n == 7 ? Grade.Questionable : Grade.Pass))];
        Finding finding = Assert.Single(Channel([], cells: cells).Findings);

        Assert.Equal(("unusable-input", Grade.Questionable, "3 of 8 trials did not pass"), (finding.Reason, finding.Grade, finding.Text));
        Assert.Equal((20.0, 72.0), (finding.FromS, finding.ToS));
    }

    // Half of the trials without a reason code: the verdict must not depend on there being one.
    [Fact]
    public void AShareWithoutReasonsIsStillTheVerdict() =>
        Assert.Equal(Grade.Reject, Channel([], cells: [JudgedCase.Cell(1, Grade.Reject)]).Verdict);

    [Theory]
    [InlineData("sampled too slowly", "sampled too slowly")]
    [InlineData(null, "no EMG band")]
    public void WhereNothingCanBeMeasuredAChannelNeverPasses(string? why, string said)
    {
        ChannelResult channel = Policy.Channel(JudgedCase.Without(JudgedCase.Cheek.Whole, why), [], [], [], [], null, []);

        Assert.Equal(Grade.Questionable, channel.Verdict);
        Assert.Equal(["unusable-input"], channel.Reasons, StringComparer.Ordinal);
        Assert.Equal<NotAssessed>([new NotAssessed("unusable-input", said)], channel.NotAssessed);
    }

    [Fact]
    public void GradesWithoutWordsAreThoseOfTheTrial()
    {
        (string, Grade)[] grades = [.. VerdictPolicy.CellGrades(
            JudgedCase.Without(JudgedCase.Cheek.Windows[1], null),
            [JudgedCase.Found("drift", Grade.Questionable), RuleOutcome.None("clipping")],
            [RuleOutcome.None("drift"), JudgedCase.Found("pops", Grade.Reject)],
            Grade.Reject,
            [JudgedCase.Carried("lead-swap", Grade.Questionable)])];

        Assert.Equal([("drift", Grade.Questionable), ("pops", Grade.Reject), ("bridge", Grade.Reject), ("lead-swap", Grade.Questionable), ("unusable-input", Grade.Questionable)], grades);
        Assert.Empty(VerdictPolicy.CellGrades(JudgedCase.Cheek.Windows[1], [RuleOutcome.None("drift")], [RuleOutcome.None("pops")], Grade.Pass, []));
    }

    [Fact]
    public void GradesOfAChannelTakeTheWorstPairThatHasAFinding()
    {
        ImmutableArray<PairJudgement> pairs =
            [Pair(JudgedCase.Carried("bridge", Grade.Questionable), Grade.Pass), Pair(JudgedCase.Carried("bridge", Grade.Reject), Grade.Questionable), Pair(null, Grade.Reject)];

        Assert.Equal([("bridge", Grade.Questionable)], VerdictPolicy.ChannelGrades(JudgedCase.Cheek.Whole, [], pairs, []));
        Assert.Empty(VerdictPolicy.ChannelGrades(JudgedCase.Cheek.Whole, [], [], []));
    }

    private static Grade? GradeOf(ImmutableArray<GradedMeasure> measures, string name) =>
        measures.Single(one => string.Equals(one.Value.Measure, name, StringComparison.Ordinal)).Grade;

    private static CellResult Cell(
        ImmutableArray<RuleOutcome> outcomes,
        ImmutableArray<Finding>? bridges = null,
        string? bridgeOpen = null,
        ImmutableArray<RuleOutcome>? baseline = null,
        ImmutableArray<Finding>? carried = null) => Policy.Cell(
        "cheek",
        JudgedCase.Trial(2),
        JudgedCase.Cheek.Windows[1],
        outcomes,
        baseline is { } before ? (JudgedCase.Cheek.Baselines[1]!, before) : null,
        bridges ?? [],
        bridgeOpen,
        carried ?? []);

    private static ChannelResult Channel(
        ImmutableArray<RuleOutcome> outcomes,
        ImmutableArray<CellResult>? cells = null,
        ImmutableArray<PairJudgement>? pairs = null,
        string? bridgeOpen = null,
        ImmutableArray<Finding>? carried = null)
    {
        ImmutableArray<CellResult> all = cells ?? [];
        return Policy.Channel(JudgedCase.Cheek.Whole, outcomes, all, [.. all.Select(cell => JudgedCase.Trial(cell.Trial))], pairs ?? [], bridgeOpen, carried ?? []);
    }

    private static PairJudgement Pair(Finding? finding, Grade channel) => new()
    {
        A = 0,
        B = 2,
        Evidence = new BridgeEvidence { Decision = "joined", Why = "they share it", GainBa = -0.25 },
        Finding = finding,
        ChannelGrade = channel,
        Trials = [],
    };
}
