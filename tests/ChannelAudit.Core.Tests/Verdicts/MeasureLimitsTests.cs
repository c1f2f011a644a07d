using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Measures;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;
using Xunit;
using GradedMeasures = ChannelAudit.Verdicts.GradedMeasures;

namespace ChannelAudit.Core.Tests.Verdicts;

/// <summary>The limits that stand beside a measure, and the grade it gets from the findings it took part in.</summary>
public sealed class MeasureLimitsTests
{
    // docs/criteria.md states the same numbers; a test there holds them to the code.
    [Theory]
    [InlineData("line_rms", false, 1, 5)]
    [InlineData("line_rms", true, 1, 5)]
    [InlineData("headroom", true, 50, 20)]
    [InlineData("drift_range", false, 200, null)]
    [InlineData("drift_range", true, null, null)]
    [InlineData("pop_rate", false, null, 30)]
    [InlineData("pops", false, 1, 3)]
    [InlineData("pops", true, null, null)]
    [InlineData("gap", true, null, null)]
    [InlineData("rectified", false, null, null)]
    public void LimitsAreThoseOfTheFirstAlternativeThatNamesTheMeasure(string measure, bool ofChannel, int? questionable, int? reject) =>
        Assert.Equal((questionable, reject), new MeasureLimits(DefaultCriteria.All).Of(measure, ofChannel));

    // Whiteness belongs to the noise floor and serves the weak response as well.
    [Fact]
    public void WhereItsReasonNamesNoLimitTheOtherReasonDoes()
    {
        AuditCriteria without = Without("noise-floor", criterion => criterion with { Questionable = [], Reject = [], ChannelQuestionable = [], ChannelReject = [] });
        MeasureDefinition whiteness = MeasureCatalog.Get("whiteness");

        Assert.Equal(("noise-floor", "weak-response"), (whiteness.Reason, whiteness.AlsoServes));
        Assert.Equal((0.5, 0.5), new MeasureLimits(DefaultCriteria.All).Of("whiteness", ofChannel: false));
        Assert.Equal((0.7, null), new MeasureLimits(without).Of("whiteness", ofChannel: false));
    }

    [Fact]
    public void AReasonThatIsNotAmongTheCriteriaHasNoLimits() =>
        Assert.Equal((null, null), new MeasureLimits(DefaultCriteria.All with { All = [] }).Of("line_rms", ofChannel: false));

    [Fact]
    public void AMeasureHasTheGradeOfTheWorstFindingItTookPartIn()
    {
        ImmutableArray<RuleOutcome> outcomes =
        [
            JudgedCase.Found("line-noise", Grade.Questionable, "line_ratio", "line_rms"),
            JudgedCase.Found("narrow-band", Grade.Reject, "line_rms"),
            JudgedCase.Found("drift", Grade.Questionable, "line_rms"),
        ];
        ImmutableArray<GradedMeasure> graded = GradedMeasures.Of(JudgedCase.Cheek.Windows[0], outcomes, new MeasureLimits(DefaultCriteria.All));

        Assert.Equal((Grade.Reject, 1, 5), (One(graded, "line_rms").Grade, One(graded, "line_rms").Questionable, One(graded, "line_rms").Reject));
        Assert.Equal(Grade.Questionable, One(graded, "line_ratio").Grade);
        Assert.Equal(Grade.Pass, One(graded, "flat_run").Grade);

        // No limit, no grade; one limit is enough for one.
        Assert.Null(One(graded, "rectified").Grade);
        Assert.Equal((Grade.Pass, null), (One(graded, "drift_range").Grade, One(graded, "drift_range").Reject));
        Assert.Equal((Grade.Pass, null), (One(graded, "pop_rate").Grade, One(graded, "pop_rate").Questionable));
    }

    [Fact]
    public void WithoutAValueThereIsNoGrade()
    {
        WindowCase nothing = JudgedCase.Without(JudgedCase.Cheek.Windows[0], "too short");
        ImmutableArray<GradedMeasure> graded = GradedMeasures.Of(nothing, [], new MeasureLimits(DefaultCriteria.All));
        GradedMeasure unknown = graded.First(one => one.Value.Value is null && one.Questionable is not null);

        Assert.Null(unknown.Grade);
    }

    [Fact]
    public void AWholeRecordingHasTheLimitsOfChannels()
    {
        ImmutableArray<GradedMeasure> graded = GradedMeasures.Of(JudgedCase.Cheek.Whole, [], new MeasureLimits(DefaultCriteria.All));

        Assert.Equal((null, null), (One(graded, "pops").Questionable, One(graded, "pops").Reject));
        Assert.Equal((600, 6000), (One(graded, "drift_slope").Questionable, One(graded, "drift_slope").Reject));
    }

    private static GradedMeasure One(ImmutableArray<GradedMeasure> graded, string name) => graded.Single(one => string.Equals(one.Value.Measure, name, StringComparison.Ordinal));

    private static AuditCriteria Without(string reason, Func<Criterion, Criterion> change) => DefaultCriteria.All with
    {
        All = [.. DefaultCriteria.All.All.Select(criterion => string.Equals(criterion.Reason, reason, StringComparison.Ordinal) ? change(criterion) : criterion)],
    };
}
