using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Measures;
using ChannelAudit.Results;

namespace ChannelAudit.Verdicts;

/// <summary>A window's measures with the grade of the worst finding each took part in, and its own limits.</summary>
internal static class GradedMeasures
{
    /// <summary>The graded measures in catalog order.</summary>
    public static ImmutableArray<GradedMeasure> Of(WindowCase window, ImmutableArray<RuleOutcome> outcomes, AuditCriteria criteria)
    {
        ImmutableArray<GradedMeasure>.Builder graded = ImmutableArray.CreateBuilder<GradedMeasure>(window.Measures.Length);
        foreach (MeasureValue value in window.Measures)
        {
            (double? questionable, double? reject) = MeasureLimits.Of(criteria, value.Measure, window.IsWhole);
            graded.Add(new GradedMeasure(value, GradeOf(value, outcomes, questionable is not null || reject is not null), questionable, reject));
        }

        return graded.MoveToImmutable();
    }

    private static Grade? GradeOf(MeasureValue value, ImmutableArray<RuleOutcome> outcomes, bool hasLimit)
    {
        if (value.Value is null || !hasLimit)
        {
            return null;
        }

        Grade worst = Grade.Pass;
        foreach (RuleOutcome outcome in outcomes)
        {
            if (outcome.Grade > worst
                && outcome.Evidence.Any(evidence => string.Equals(evidence.Measure, value.Measure, StringComparison.Ordinal)))
            {
                worst = outcome.Grade;
            }
        }

        return worst;
    }
}
