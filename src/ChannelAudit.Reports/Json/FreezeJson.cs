using System.Text.Json;
using ChannelAudit.Criteria;

namespace ChannelAudit.Reports.Json;

/// <summary>The record of a freeze, as every JSON file writes it: an object, or null for limits that were not frozen.</summary>
internal static class FreezeJson
{
    private const string Name = "frozen";

    /// <summary>Writes it.</summary>
    public static void Write(Utf8JsonWriter json, AuditCriteria criteria)
    {
        if (criteria.Frozen is not { } frozen)
        {
            json.WriteNull(Name);
            return;
        }

        json.WriteStartObject(Name);
        json.WriteString("date", frozen.Date);
        json.WriteString("version", frozen.Version);
        json.WriteString("sha256", frozen.Sha256);
        json.WriteBoolean("unchanged", frozen.IsUnchanged);
        json.WriteTexts("differences", frozen.Differences);
        json.WriteEndObject();
    }

    /// <summary>Reads it back.</summary>
    public static FreezeRecord? Read(JsonField criteria) => criteria.ObjectOrNull(Name) is { } field
        ? new FreezeRecord(field.Text("date"), field.Text("version"), field.Text("sha256"), field.Texts("differences"))
        : null;
}
