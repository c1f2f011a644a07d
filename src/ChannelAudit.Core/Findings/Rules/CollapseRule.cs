using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>An amplitude that has collapsed: the whole recording holds nothing but the amplifier's noise, whether a task was asked or not.</summary>
/// <remarks>
/// The alternatives of <c>weak-response</c> without <c>contraction_snr</c>, on the measures of the whole recording; those of trials hold for all
/// trials alike. Where the best contraction of a task counts as an answer, the electrodes are connected and nothing has collapsed. Where a task shows that the
/// muscle hardly answers, <c>whiteness</c> is not asked any more: it stands for the same, and an amplifier's noise is not always quite white.
/// A collapse cannot be said of a single trial: a muscle may be still for three seconds.
/// </remarks>
internal static class CollapseRule
{
    private const string Contraction = "contraction_snr";
    private const string Whiteness = "whiteness";
    private const string Cause = "gel between this site's own electrodes, a dead pair, or a shorted input";

    /// <summary>Whether an alternative asks for the size of a contraction, which only a task can give.</summary>
    public static bool AsksForTask(LimitSet set) => set.Limits.Any(IsOfContraction);

    /// <summary>Whether an alternative of the channel can be reached without a task.</summary>
    public static bool IsAsked(AuditCriteria criteria)
    {
        Criterion criterion = criteria.For(ReasonCode.WeakResponse);
        return criterion.ChannelQuestionable.Concat(criterion.ChannelReject).Any(set => !AsksForTask(set));
    }

    /// <summary>Why a collapse could not be seen, or null.</summary>
    public static string? WhyOpen(WindowCase whole) => whole.WhyNone("rest_excess") ?? whole.WhyNone("whiteness") ?? whole.WhyNone("band_p95");

    /// <summary>Judges the whole recording for the channel; a trial has nothing to say.</summary>
    public static RuleOutcome Judge(WindowCase window) => window.IsWhole ? Judge(window, true) : RuleOutcome.None(ReasonCode.WeakResponse);

    /// <summary>What the whole recording says of all its trials, or null.</summary>
    public static Finding? OfTrials(WindowCase whole)
    {
        RuleOutcome outcome = Judge(whole, false);
        return outcome.Grade == Grade.Pass ? null : new Finding
        {
            Reason = outcome.Reason,
            Grade = outcome.Grade,
            Channels = [whole.Channel.Name],
            FromS = whole.Reading.FromS,
            ToS = whole.Reading.ToS,
            Evidence = outcome.Evidence,
            Text = outcome.Text,
            Cause = outcome.Cause,
        };
    }

    private static RuleOutcome Judge(WindowCase whole, bool ofChannel)
    {
        bool? answers = Answers(whole);
        if (answers == true)
        {
            return RuleOutcome.None(ReasonCode.WeakResponse);
        }

        Criterion criterion = whole.Criteria.For(ReasonCode.WeakResponse);
        (ImmutableArray<LimitSet> questionable, ImmutableArray<LimitSet> reject) = ofChannel
            ? (criterion.ChannelQuestionable, criterion.ChannelReject)
            : (criterion.Questionable, criterion.Reject);
        LimitJudgement judged = LimitJudgement.Of(Asked(questionable), Asked(reject), whole.ValueOf);
        judged = judged.Grade == Grade.Pass && answers == false
            ? LimitJudgement.Of(WithoutWhiteness(questionable), WithoutWhiteness(reject), whole.ValueOf)
            : judged;
        return judged.Grade == Grade.Pass
            ? RuleOutcome.None(ReasonCode.WeakResponse)
            : new RuleOutcome(
                ReasonCode.WeakResponse,
                judged.Grade,
                judged.Evidence,
                $"hardly more than the amplifier's own noise throughout: {Say.Number(whole.ValueOf("rest_rms") ?? 0)} µV at rest, {Say.Number(whole.ValueOf("band_p95") ?? 0)} µV when loudest",
                Cause);
    }

    private static ImmutableArray<LimitSet> Asked(ImmutableArray<LimitSet> sets) => [.. sets.Where(set => !AsksForTask(set))];

    private static ImmutableArray<LimitSet> WithoutWhiteness(ImmutableArray<LimitSet> sets) =>
    [
        .. Asked(sets)
            .Select(set => new LimitSet([.. set.Limits.Where(limit => !string.Equals(limit.Measure, Whiteness, StringComparison.Ordinal))]))
            .Where(set => !set.Limits.IsEmpty),
    ];

    /// <summary>Whether the best contraction reaches none of the limits on its size; null without a task.</summary>
    private static bool? Answers(WindowCase whole)
    {
        if (whole.ValueOf(Contraction) is not { } snr)
        {
            return null;
        }

        Criterion criterion = whole.Criteria.For(ReasonCode.WeakResponse);
        double[] limits =
        [
            .. CriterionLevel.All.SelectMany(level => level.Get(criterion)).SelectMany(set => set.Limits).Where(IsOfContraction).Select(limit => limit.Value),
        ];
        return limits.Length > 0 && !limits.Any(limit => MeasureCatalog.Get(Contraction).Reaches(snr, limit));
    }

    private static bool IsOfContraction(Limit limit) => string.Equals(limit.Measure, Contraction, StringComparison.Ordinal);
}
