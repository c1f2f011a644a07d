using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Studies;

namespace ChannelAudit.Reports.Json;

/// <summary>Recordings other than the rest, in <c>audit.json</c>.</summary>
internal static class StudyJson
{
    /// <summary>Writes the list <c>odd</c>, empty when nothing was found.</summary>
    public static void Write(JsonText text, ImmutableArray<StudyFinding> odd) => text.Rows("odd", odd, WriteOne);

    private static void WriteOne(Utf8JsonWriter json, StudyFinding finding)
    {
        json.WriteStartObject();
        json.WriteString("kind", finding.Kind);
        json.WriteTexts("recordings", finding.Recordings);
        json.WriteString("channel", finding.Channel);
        json.WriteString("text", finding.Text);
        json.WriteString("to_do", finding.ToDo);
        json.WriteEndObject();
    }
}
