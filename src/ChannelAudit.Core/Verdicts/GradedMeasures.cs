using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Measures;
using ChannelAudit.Results;

namespace ChannelAudit.Verdicts;

/// <summary>A window's measures with the grade of the worst finding each took part in, and its own limits.</summary>
internal static class GradedMeasures
{
    /// <summary>The graded measures in catalog order.</summary>
    public static ImmutableArray<GradedMeasure> Of(WindowCase window, ImmutableArray<RuleOutcome> outcomes, MeasureLimits limits)
    {
        ImmutableArray<GradedMeasure>.Builder graded = ImmutableArray.CreateBuilder<GradedMeasure>(window.Measures.Length);
        foreach (MeasureValue value in window.Measures)
        {
            (double? questionable, double? reject) = limits.Of(value.Measure, window.IsWhole);
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
            worst = outcome.Grade > worst && Names(outcome.Evidence, value.Measure) ? outcome.Grade : worst;
        }

        return worst;
    }

    private static bool Names(ImmutableArray<Evidence> evidence, string measure)
    {
        foreach (Evidence one in evidence)
        {
            if (string.Equals(one.Measure, measure, StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }
}
