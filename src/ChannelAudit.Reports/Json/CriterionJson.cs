using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Criteria;

namespace ChannelAudit.Reports.Json;

/// <summary>The limits of a reason with their source, as every JSON file writes them.</summary>
internal static class CriterionJson
{
    /// <summary>Writes one criterion.</summary>
    public static void Write(Utf8JsonWriter json, Criterion criterion)
    {
        json.WriteStartObject();
        json.WriteString("reason", criterion.Reason);
        WriteSets(json, "questionable", criterion.Questionable);
        WriteSets(json, "reject", criterion.Reject);
        WriteSets(json, "channel_questionable", criterion.ChannelQuestionable);
        WriteSets(json, "channel_reject", criterion.ChannelReject);
        json.WriteString("source", criterion.Source);
        json.WriteEndObject();
    }

    private static void WriteSets(Utf8JsonWriter json, string name, ImmutableArray<LimitSet> sets)
    {
        json.WriteStartArray(name);
        foreach (LimitSet set in sets)
        {
            json.WriteStartObject();
            foreach (Limit limit in set.Limits)
            {
                json.WriteNumber(limit.Measure, limit.Value);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
