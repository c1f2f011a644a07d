using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Values against alternatives of limits.</summary>
/// <param name="Grade">The worst grade whose limits were reached.</param>
/// <param name="Evidence">The values that reached them.</param>
internal readonly record struct LimitJudgement(Grade Grade, ImmutableArray<Evidence> Evidence)
{
    /// <summary>Judges values.</summary>
    /// <typeparam name="T">Where they come from.</typeparam>
    /// <param name="questionable">Alternatives for questionable.</param>
    /// <param name="reject">Alternatives for reject.</param>
    /// <param name="values">The values.</param>
    public static LimitJudgement Of<T>(ImmutableArray<LimitSet> questionable, ImmutableArray<LimitSet> reject, T values)
        where T : IMeasured
    {
        if (FirstReached(reject, values) is { } rejected)
        {
            return new LimitJudgement(Grade.Reject, EvidenceOf(rejected, values));
        }

        return FirstReached(questionable, values) is { } doubted
            ? new LimitJudgement(Grade.Questionable, EvidenceOf(doubted, values))
            : new LimitJudgement(Grade.Pass, []);
    }

    /// <summary>Judges values given by a function.</summary>
    /// <param name="questionable">Alternatives for questionable.</param>
    /// <param name="reject">Alternatives for reject.</param>
    /// <param name="valueOf">A measure's value, or null.</param>
    public static LimitJudgement Of(
        ImmutableArray<LimitSet> questionable, ImmutableArray<LimitSet> reject, Func<string, double?> valueOf) => Of(questionable, reject, new ByFunction(valueOf));

    /// <summary>The grade alone, for which no evidence is put together.</summary>
    /// <inheritdoc cref="Of{T}"/>
    public static Grade GradeOf<T>(ImmutableArray<LimitSet> questionable, ImmutableArray<LimitSet> reject, T values)
        where T : IMeasured =>
        FirstReached(reject, values) is not null ? Grade.Reject : FirstReached(questionable, values) is not null ? Grade.Questionable : Grade.Pass;

    /// <summary>Whether every limit of a set is reached; a set without limits is not.</summary>
    public static bool IsReached<T>(LimitSet set, T values)
        where T : IMeasured
    {
        foreach (Limit limit in set.Limits)
        {
            if (values.ValueOf(limit.Measure) is not { } value || !MeasureCatalog.Get(limit.Measure).Reaches(value, limit.Value))
            {
                return false;
            }
        }

        return !set.Limits.IsEmpty;
    }

    /// <summary>The evidence of a set that is reached.</summary>
    public static ImmutableArray<Evidence> EvidenceOf<T>(LimitSet set, T values)
        where T : IMeasured =>
        [.. set.Limits.Select(limit => new Evidence(limit.Measure, values.ValueOf(limit.Measure) ?? 0, MeasureCatalog.Get(limit.Measure).Unit, limit.Value))];

    private static LimitSet? FirstReached<T>(ImmutableArray<LimitSet> sets, T values)
        where T : IMeasured
    {
        foreach (LimitSet set in sets)
        {
            if (IsReached(set, values))
            {
                return set;
            }
        }

        return null;
    }

    private readonly record struct ByFunction(Func<string, double?> Function) : IMeasured
    {
        public double? ValueOf(string measure) => Function(measure);
    }
}
