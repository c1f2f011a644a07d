using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Measures;

namespace ChannelAudit.Verdicts;

/// <summary>A measure's own limits: those of the first alternative that names it, under its reason or, where that has none, under the other it serves.</summary>
internal sealed class MeasureLimits
{
    private readonly Dictionary<string, (double? Questionable, double? Reject)> ofTrials;
    private readonly Dictionary<string, (double? Questionable, double? Reject)> ofChannels;

    /// <summary>Looks them up once: every trial of every channel asks for all.</summary>
    /// <param name="criteria">The limits in force.</param>
    public MeasureLimits(AuditCriteria criteria)
    {
        ofTrials = All(criteria, ofChannel: false);
        ofChannels = All(criteria, ofChannel: true);
    }

    /// <summary>The questionable and the reject limit, each null where none names the measure.</summary>
    /// <param name="measure">One of the measures of channels.</param>
    /// <param name="ofChannel">Whether the limits of the whole recording are asked for.</param>
    public (double? Questionable, double? Reject) Of(string measure, bool ofChannel) => (ofChannel ? ofChannels : ofTrials)[measure];

    private static Dictionary<string, (double? Questionable, double? Reject)> All(AuditCriteria criteria, bool ofChannel) =>
        MeasureCatalog.OfChannels.ToDictionary(measure => measure.Name, measure => Of(criteria, measure.Name, ofChannel), StringComparer.Ordinal);

    private static (double? Questionable, double? Reject) Of(AuditCriteria criteria, string measure, bool ofChannel)
    {
        MeasureDefinition definition = MeasureCatalog.Get(measure);
        (double? Questionable, double? Reject) own = Of(criteria, definition.Reason, measure, ofChannel);
        return own == (null, null) && definition.AlsoServes is { } other ? Of(criteria, other, measure, ofChannel) : own;
    }

    private static (double? Questionable, double? Reject) Of(AuditCriteria criteria, string reason, string measure, bool ofChannel)
    {
        Criterion? criterion = criteria.All.FirstOrDefault(item => string.Equals(item.Reason, reason, StringComparison.Ordinal));
        return criterion is null
            ? (null, null)
            : ofChannel
                ? (First(criterion.ChannelQuestionable, measure), First(criterion.ChannelReject, measure))
                : (First(criterion.Questionable, measure), First(criterion.Reject, measure));
    }

    private static double? First(ImmutableArray<LimitSet> sets, string measure)
    {
        foreach (LimitSet set in sets)
        {
            foreach (Limit limit in set.Limits)
            {
                if (string.Equals(limit.Measure, measure, StringComparison.Ordinal))
                {
                    return limit.Value;
                }
            }
        }

        return null;
    }
}
