using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Measures;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Comparing;

/// <summary>Finds the number that made two audits judge differently.</summary>
/// <remarks>
/// It is evidence of the audit that found more: of the finding that made its verdict worse, or, with the same verdict on both sides, of a finding whose
/// reason the other does not give. Both limits are those of that finding's grade.
/// </remarks>
internal static class DecidingMeasure
{
    /// <summary>The number; null when no reason came or went and the verdict is the same, or the finding has no numbers.</summary>
    public static MeasureChange? Of(JudgedPart a, JudgedPart b, AuditCriteria criteriaA, AuditCriteria criteriaB)
    {
        bool isFoundByB = b.Verdict != a.Verdict ? b.Verdict > a.Verdict : b.Reasons.Any(reason => !Has(a.Reasons, reason));
        (JudgedPart more, JudgedPart less) = isFoundByB ? (b, a) : (a, b);
        if (Finding(more, less) is not { } finding)
        {
            return null;
        }

        AuditCriteria lessCriteria = isFoundByB ? criteriaA : criteriaB;
        Evidence evidence = finding.Evidence.FirstOrDefault(one => LimitOf(less, finding, one.Measure, lessCriteria) != one.Limit) ?? finding.Evidence[0];
        (double? ofMore, double? ofLess, string? where) = Values(more, less, finding, evidence);
        double? limit = LimitOf(less, finding, evidence.Measure, lessCriteria);
        return isFoundByB
            ? new MeasureChange(evidence.Measure, evidence.Unit, ofLess, ofMore, limit, evidence.Limit, where)
            : new MeasureChange(evidence.Measure, evidence.Unit, ofMore, ofLess, evidence.Limit, limit, where);
    }

    // A finding may rest on the quiet seconds around a trial or on the whole channel: its number must not stand beside the trial's own as if one had
    // become the other.
    private static (double? OfMore, double? OfLess, string? Where) Values(JudgedPart more, JudgedPart less, Finding finding, Evidence evidence)
    {
        double? own = Measures(more, finding).ValueOf(evidence.Measure);
        if (own is not { } value || value == evidence.Value)
        {
            return (evidence.Value, ValueOf(less, finding, evidence.Measure), null);
        }

        bool isReached = MeasureCatalog.Contains(evidence.Measure) && MeasureCatalog.Get(evidence.Measure).Sense == LimitSense.AtMost
            ? value <= evidence.Limit
            : value >= evidence.Limit;
        return isReached && !finding.FromQuietStretches
            ? (value, Measures(less, finding).ValueOf(evidence.Measure), null)
            : (evidence.Value, null, finding.FromQuietStretches ? "in the quiet seconds around it" : "in the stretch that was found");
    }

    private static Finding? Finding(JudgedPart more, JudgedPart less) => more.Findings
        .Where(finding => finding.Grade != Grade.Pass && !finding.Evidence.IsEmpty)
        .Where(finding => more.Verdict == less.Verdict ? !Has(less.Reasons, finding.Reason) : finding.Grade == more.Verdict)
        .OrderBy(finding => Has(less.Reasons, finding.Reason))
        .ThenByDescending(finding => finding.Grade)
        .ThenBy(finding => more.Reasons.IndexOf(finding.Reason))
        .FirstOrDefault();

    private static bool Has(ImmutableArray<string> reasons, string reason) => reasons.Contains(reason, StringComparer.Ordinal);

    // Numbers that only criteria know are no measures of the window; the other audit's own finding may still have them.
    private static double? ValueOf(JudgedPart part, Finding finding, string measure) =>
        Measures(part, finding).ValueOf(measure)
        ?? part.Findings.SelectMany(one => one.Evidence).FirstOrDefault(one => string.Equals(one.Measure, measure, StringComparison.Ordinal))?.Value;

    private static double? LimitOf(JudgedPart part, Finding finding, string measure, AuditCriteria criteria)
    {
        foreach (GradedMeasure graded in Measures(part, finding).Where(graded => string.Equals(graded.Value.Measure, measure, StringComparison.Ordinal)))
        {
            if ((finding.Grade == Grade.Reject ? graded.Reject : graded.Questionable) is { } own)
            {
                return own;
            }
        }

        return Sets(part, finding, criteria)
            .SelectMany(set => set.Limits)
            .FirstOrDefault(limit => string.Equals(limit.Measure, measure, StringComparison.Ordinal))?.Value;
    }

    private static ImmutableArray<GradedMeasure> Measures(JudgedPart part, Finding finding) => finding.InBaseline ? part.BaselineMeasures : part.Measures;

    // The rule on the share of bad trials names the reasons of the trials; its own limits stand under a name of their own.
    private static IEnumerable<LimitSet> Sets(JudgedPart part, Finding finding, AuditCriteria criteria) => criteria.All
        .Where(criterion => string.Equals(criterion.Reason, finding.Reason, StringComparison.Ordinal)
            || string.Equals(criterion.Reason, DefaultCriteria.BadTrials, StringComparison.Ordinal))
        .SelectMany(criterion => (part.IsChannel, finding.Grade) switch
        {
            (true, Grade.Reject) => criterion.ChannelReject.Concat(criterion.Reject),
            (true, _) => criterion.ChannelQuestionable.Concat(criterion.Questionable),
            (false, Grade.Reject) => criterion.Reject,
            _ => criterion.Questionable,
        });
}
