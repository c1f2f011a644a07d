using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Measures;

namespace ChannelAudit.Reports.Wording;

/// <summary>Limits as people read them: <c>line_rms ≥ 5 µV and line_ratio ≥ 0 dB or ...</c>.</summary>
public static class LimitWords
{
    /// <summary>What stands for a list without limits.</summary>
    public const string Off = "off";

    /// <summary>The four lists of a criterion with what they are called.</summary>
    public static ImmutableArray<(string Name, Func<Criterion, ImmutableArray<LimitSet>> Get)> Levels { get; } =
    [
        ("questionable", criterion => criterion.Questionable),
        ("reject", criterion => criterion.Reject),
        ("channel questionable", criterion => criterion.ChannelQuestionable),
        ("channel reject", criterion => criterion.ChannelReject),
    ];

    private const string SwapReject = "the same both ways round, each site answering the other's task (part of the rule)";

    /// <summary>A list of alternatives; of several, those with more than one limit in brackets.</summary>
    public static string Sets(ImmutableArray<LimitSet> sets) => sets.IsEmpty ? Off
        : string.Join(" or ", sets.Select(set => sets.Length > 1 && set.Limits.Length > 1 ? $"({Set(set)})" : Set(set)));

    /// <summary>What makes a trial or a whole channel questionable.</summary>
    /// <param name="criterion">The limits of a reason.</param>
    /// <param name="none">What stands where there are none.</param>
    public static string Questionable(Criterion criterion, string none)
    {
        ArgumentNullException.ThrowIfNull(criterion);
        return Both(criterion.Questionable, criterion.ChannelQuestionable, none);
    }

    /// <summary>What makes a trial or a whole channel reject: limits, or where a reason has a rule of its own that rule.</summary>
    /// <param name="criterion">The limits of a reason.</param>
    /// <param name="none">What stands where there are none.</param>
    public static string Reject(Criterion criterion, string none)
    {
        ArgumentNullException.ThrowIfNull(criterion);
        bool hasRule = string.Equals(criterion.Reason, ReasonCode.LeadSwap, StringComparison.Ordinal) && !criterion.Questionable.IsEmpty;
        return Both(criterion.Reject, criterion.ChannelReject, hasRule ? SwapReject : none);
    }

    /// <summary>Limits of trials, and behind them those of whole channels.</summary>
    /// <param name="trial">Alternatives for a trial.</param>
    /// <param name="channel">Alternatives for a whole channel.</param>
    /// <param name="none">What stands where there are neither.</param>
    private static string Both(ImmutableArray<LimitSet> trial, ImmutableArray<LimitSet> channel, string none) => (trial.IsEmpty, channel.IsEmpty) switch
    {
        (true, true) => none,
        (false, true) => Sets(trial),
        (true, false) => $"whole channel: {Sets(channel)}",
        _ => $"{Sets(trial)}; whole channel: {Sets(channel)}",
    };

    private static string Set(LimitSet set) => string.Join(" and ", set.Limits.Select(Of));

    private static string Of(Limit limit)
    {
        if (!MeasureCatalog.Contains(limit.Measure))
        {
            return $"{limit.Measure} {Quantities.Short(limit.Value)}";
        }

        MeasureDefinition measure = MeasureCatalog.Get(limit.Measure);
        string sign = measure.Sense == LimitSense.AtMost ? "\u2264" : "\u2265";
        return $"{limit.Measure} {sign} {Quantities.WithUnit(limit.Value, measure.Unit)}";
    }
}
