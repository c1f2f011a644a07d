using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Findings.Rules;
using ChannelAudit.Measures;
using ChannelAudit.Setup;
using ChannelAudit.Text;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Excerpts;

/// <summary>Whether a finding of a trial follows from the trial's own samples and the limits.</summary>
/// <param name="IsConfirmed">Whether numbers and limits give it; null: it rests on more than the window.</param>
/// <param name="Text">The numbers, what differs, or what it rests on.</param>
public sealed record FindingCheck(bool? IsConfirmed, string Text)
{
    /// <summary>Checks a finding.</summary>
    /// <param name="finding">The finding, of one trial.</param>
    /// <param name="criteria">The limits in force, as given.</param>
    /// <param name="scoring">The filter of scoring, which the limits are asked behind.</param>
    /// <param name="measured">What was measured in the window again.</param>
    public static FindingCheck Of(Finding finding, AuditCriteria criteria, ScoringSetup scoring, ImmutableArray<MeasureValue> measured)
    {
        ArgumentNullException.ThrowIfNull(finding);
        if (WhyOpen(finding) is { } cause)
        {
            return new FindingCheck(null, $"{finding.Reason} rests on {cause}");
        }

        if (finding.Evidence.FirstOrDefault(evidence => ValueOf(measured, evidence.Measure) != evidence.Value) is { } other)
        {
            return new FindingCheck(false, $"{finding.Reason}: {other.Measure} is {OneLine.Number(other.Value)} in the audit and {Word(ValueOf(measured, other.Measure))} in the samples");
        }

        ScoringFilter filter = ScoringFilter.Of(scoring);
        Criterion limits = (filter.IsStated ? ScoredCriteria.Of(criteria, filter) : criteria).For(finding.Reason);
        LimitJudgement judged = LimitJudgement.Of(limits.Questionable, limits.Reject, measure => ValueOf(measured, measure));

        // A rule can be milder than its limits (a blink, noise in a part of the trial), never harder.
        return judged.Grade < finding.Grade
            ? new FindingCheck(false, $"{finding.Reason}: the limits give {judged.Grade.ToString().ToLowerInvariant()}, the audit says {finding.Grade.ToString().ToLowerInvariant()}")
            : new FindingCheck(true, $"{finding.Reason}: {string.Join(", ", finding.Evidence.Select(Words))}");
    }

    private static string? WhyOpen(Finding finding) =>
        finding.FromQuietStretches ? "the quiet stretches around the trial"
        : finding.Channels.Length > 1 ? "several channels over the whole recording"
        : finding.Evidence.IsEmpty ? "what the input is throughout"
        : finding.Evidence.Select(evidence => WhyOpen(evidence.Measure)).FirstOrDefault(cause => cause is not null);

    private static string? WhyOpen(string measure) => measure switch
    {
        _ when ExcerptMeasures.IsOfWindowAlone(measure) => null,
        "headroom" or "peak_use" => "the rails of the whole channel",
        _ when measure.StartsWith("clipped", StringComparison.Ordinal) => "the rails of the whole channel",
        _ when measure.StartsWith("flat", StringComparison.Ordinal) => "flat stretches of the whole channel",
        _ when measure.StartsWith("pop", StringComparison.Ordinal) => "the threshold for spikes of the whole channel",
        _ => "the rest of the whole channel",
    };

    private static double? ValueOf(ImmutableArray<MeasureValue> measured, string measure) =>
        measured.FirstOrDefault(value => string.Equals(value.Measure, measure, StringComparison.Ordinal)).Value;

    private static string Word(double? value) => value is { } number ? OneLine.Number(number) : "not there";

    private static string Words(Evidence evidence) =>
        $"{evidence.Measure} {OneLine.Number(Math.Round(evidence.Value, 3))} {evidence.Unit} (limit {OneLine.Number(evidence.Limit)})";
}
