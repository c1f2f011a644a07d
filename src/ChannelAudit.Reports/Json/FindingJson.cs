using System.Text.Json;
using ChannelAudit.Findings;

namespace ChannelAudit.Reports.Json;

/// <summary>A finding with its evidence in <c>result.json</c>.</summary>
internal static class FindingJson
{
    /// <summary>Writes one finding.</summary>
    public static void Write(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartObject();
        json.WriteString("reason", finding.Reason);
        json.WriteGrade("grade", finding.Grade);
        json.WriteTexts("channels", finding.Channels);
        if (finding.Trial is { } trial)
        {
            json.WriteNumber("trial", trial);
        }

        json.WriteBoolean("in_baseline", finding.InBaseline);
        json.WriteBoolean("from_quiet_stretches", finding.FromQuietStretches);
        json.WriteNumber("from_s", finding.FromS);
        json.WriteNumber("to_s", finding.ToS);
        json.WriteStartArray("evidence");
        foreach (Evidence evidence in finding.Evidence)
        {
            json.WriteStartObject();
            json.WriteString("measure", evidence.Measure);
            json.WriteNumber("value", evidence.Value);
            json.WriteString("unit", evidence.Unit);
            json.WriteNumber("limit", evidence.Limit);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        WriteEffect(json, finding.Effect);
        json.WriteString("text", finding.Text);
        json.WriteString("cause", finding.Cause);
        json.WriteEndObject();
    }

    private static void WriteEffect(Utf8JsonWriter json, ScoreEffect? effect)
    {
        if (effect is null)
        {
            return;
        }

        json.WriteStartObject("effect");
        WriteNumber(json, "uv", effect.Microvolts);
        WriteNumber(json, "percent", effect.Percent);
        WriteNumber(json, "without_uv", effect.WithoutUv);
        if (effect.Note is { } note)
        {
            json.WriteString("note", note);
        }

        json.WriteEndObject();
    }

    private static void WriteNumber(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, number);
        }
    }
}
