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
    /// <param name="questionable">Alternatives for questionable.</param>
    /// <param name="reject">Alternatives for reject.</param>
    /// <param name="valueOf">A measure's value, or null.</param>
    public static LimitJudgement Of(
        ImmutableArray<LimitSet> questionable, ImmutableArray<LimitSet> reject, Func<string, double?> valueOf)
    {
        if (FirstReached(reject, valueOf) is { IsEmpty: false } rejected)
        {
            return new LimitJudgement(Grade.Reject, rejected);
        }

        return FirstReached(questionable, valueOf) is { IsEmpty: false } doubted
            ? new LimitJudgement(Grade.Questionable, doubted)
            : new LimitJudgement(Grade.Pass, []);
    }

    /// <summary>The evidence when every limit of a set is reached; empty otherwise.</summary>
    public static ImmutableArray<Evidence> Reached(LimitSet set, Func<string, double?> valueOf)
    {
        ImmutableArray<Evidence>.Builder evidence = ImmutableArray.CreateBuilder<Evidence>(set.Limits.Length);
        foreach (Limit limit in set.Limits)
        {
            MeasureDefinition definition = MeasureCatalog.Get(limit.Measure);
            if (valueOf(limit.Measure) is not { } value || !definition.Reaches(value, limit.Value))
            {
                return [];
            }

            evidence.Add(new Evidence(limit.Measure, value, definition.Unit, limit.Value));
        }

        return evidence.MoveToImmutable();
    }

    private static ImmutableArray<Evidence> FirstReached(ImmutableArray<LimitSet> sets, Func<string, double?> valueOf)
    {
        foreach (LimitSet set in sets)
        {
            ImmutableArray<Evidence> evidence = Reached(set, valueOf);
            if (!evidence.IsEmpty)
            {
                return evidence;
            }
        }

        return [];
    }
}
