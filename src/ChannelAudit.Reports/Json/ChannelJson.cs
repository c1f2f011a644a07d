using System.Text.Json;
using ChannelAudit.Findings;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Json;

/// <summary>A channel and its cells in <c>result.json</c>.</summary>
internal static class ChannelJson
{
    /// <summary>Writes one channel.</summary>
    public static void Write(JsonText text, ChannelResult channel)
    {
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject();
        json.WriteString("name", channel.Name);
        json.WriteString("label", channel.Label);
        json.WriteNumber("rate_hz", channel.RateHz);
        json.WriteNumber("band_from_hz", channel.BandFromHz);
        json.WriteNumber("band_to_hz", channel.BandToHz);
        json.WriteGrade("verdict", channel.Verdict);
        json.WriteTexts("reasons", channel.Reasons);
        text.Rows("not_assessed", channel.NotAssessed, WriteNotAssessed);
        text.Rows("measures", channel.Measures, WriteMeasure);
        text.Rows("findings", channel.Findings, FindingJson.Write);
        SignalJson.Write(json, channel.Signal);
        json.WriteStartArray("cells");
        foreach (CellResult cell in channel.Cells)
        {
            WriteCell(text, cell);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteCell(JsonText text, CellResult cell)
    {
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject();
        json.WriteNumber("trial", cell.Trial);
        json.WriteGrade("verdict", cell.Verdict);
        json.WriteTexts("reasons", cell.Reasons);
        text.Rows("not_assessed", cell.NotAssessed, WriteNotAssessed);
        text.Rows("measures", cell.Measures, WriteMeasure);
        text.Rows("baseline_measures", cell.BaselineMeasures, WriteMeasure);
        text.Rows("findings", cell.Findings, FindingJson.Write);
        json.WriteEndObject();
    }

    private static void WriteNotAssessed(Utf8JsonWriter json, NotAssessed missing)
    {
        json.WriteStartObject();
        json.WriteString("reason", missing.Reason);
        json.WriteString("cause", missing.Cause);
        json.WriteEndObject();
    }

    private static void WriteMeasure(Utf8JsonWriter json, GradedMeasure measure)
    {
        json.WriteStartObject();
        json.WriteString("measure", measure.Value.Measure);
        json.WriteNumberOrNull("value", measure.Value.Value);
        if (measure.Grade is { } grade)
        {
            json.WriteGrade("grade", grade);
        }

        json.WriteNumberIfAny("questionable", measure.Questionable);
        json.WriteNumberIfAny("reject", measure.Reject);
        json.WriteTextIfAny("note", measure.Value.Note);
        json.WriteEndObject();
    }
}
