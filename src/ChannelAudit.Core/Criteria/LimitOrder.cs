using System.Collections.Immutable;
using ChannelAudit.Measures;

namespace ChannelAudit.Criteria;

/// <summary>Finds limits in the wrong order: a reject limit that is milder than the questionable one.</summary>
internal static class LimitOrder
{
    /// <summary>The first measure whose reject limit is reached before its mildest questionable limit, or null.</summary>
    /// <param name="questionable">Alternatives for questionable.</param>
    /// <param name="reject">Alternatives for reject.</param>
    /// <remarks>Equal limits are in order: the value is then rejected at once.</remarks>
    public static (Limit Questionable, Limit Reject)? FirstFault(ImmutableArray<LimitSet> questionable, ImmutableArray<LimitSet> reject)
    {
        foreach (Limit hard in reject.SelectMany(set => set.Limits))
        {
            MeasureDefinition measure = MeasureCatalog.Get(hard.Measure);
            Limit? mildest = null;
            foreach (Limit soft in questionable.SelectMany(set => set.Limits))
            {
                bool isSame = string.Equals(soft.Measure, hard.Measure, StringComparison.Ordinal);
                if (isSame && (mildest is null || IsMilder(measure, soft.Value, mildest.Value)))
                {
                    mildest = soft;
                }
            }

            if (mildest is not null && IsMilder(measure, hard.Value, mildest.Value))
            {
                return (mildest, hard);
            }
        }

        return null;
    }

    private static bool IsMilder(MeasureDefinition measure, double value, double than) =>
        measure.Sense == LimitSense.AtMost ? value > than : value < than;
}
