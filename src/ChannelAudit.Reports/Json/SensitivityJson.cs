using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Json;

/// <summary>How many verdicts hang on the limits, in <c>result.json</c>.</summary>
internal static class SensitivityJson
{
    private const string Name = "sensitivity";

    /// <summary>Writes the list; null when it was not counted.</summary>
    public static void Write(JsonText text, ImmutableArray<MovedLimits>? rows)
    {
        if (rows is { } known)
        {
            text.Rows(Name, known, WriteRow);
        }
        else
        {
            text.Writer.WriteNull(Name);
        }
    }

    /// <summary>Reads it back; null when it was not counted.</summary>
    public static ImmutableArray<MovedLimits>? Read(JsonField root) => root.Has(Name)
        ? root.List(Name, row => new MovedLimits(row.Text("reason"), row.Number("factor"), Counts(row.Object("trials")), Counts(row.Object("channels"))))
        : null;

    private static void WriteRow(Utf8JsonWriter json, MovedLimits row)
    {
        json.WriteStartObject();
        json.WriteString("reason", row.Reason);
        json.WriteNumber("factor", row.Factor);
        WriteCounts(json, "trials", row.Trials);
        WriteCounts(json, "channels", row.Channels);
        json.WriteEndObject();
    }

    private static void WriteCounts(Utf8JsonWriter json, string name, GradeCounts counts)
    {
        json.WriteStartObject(name);
        json.WriteNumber("pass", counts.Pass);
        json.WriteNumber("questionable", counts.Questionable);
        json.WriteNumber("reject", counts.Reject);
        json.WriteEndObject();
    }

    private static GradeCounts Counts(JsonField field) => new(field.Whole("pass"), field.Whole("questionable"), field.Whole("reject"));
}
