using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Reports.Json;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Bids;

/// <summary>The JSON file beside an exported table: what the table is, and every column defined.</summary>
internal static class BidsSidecar
{
    /// <summary>The file as UTF-8 bytes.</summary>
    /// <param name="what">What the table holds, in a sentence's beginning.</param>
    /// <param name="columns">Its columns.</param>
    /// <param name="recording">The recording it speaks of.</param>
    /// <param name="source">The recording as BIDS URI; null when the raw data set is not known.</param>
    public static byte[] Render(string what, ImmutableArray<BidsColumn> columns, RecordingResult recording, string? source)
    {
        using JsonText text = new();
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject();
        json.WriteString("Description", $"{what} in the recording {recording.Path} (SHA-256 {recording.Sha256}), judged by rule");
        if (source is not null)
        {
            json.WriteStartArray("Sources");
            json.WriteStringValue(source);
            json.WriteEndArray();
        }

        foreach (BidsColumn column in columns)
        {
            Write(json, column);
        }

        json.WriteEndObject();
        return text.ToArray();
    }

    private static void Write(Utf8JsonWriter json, BidsColumn column)
    {
        json.WriteStartObject(column.Name);
        json.WriteString("Description", column.Meaning);
        json.WriteTextIfAny("Units", column.Unit);
        if (column.Levels.Count > 0)
        {
            json.WriteStartObject("Levels");
            foreach ((string value, string meaning) in column.Levels)
            {
                json.WriteString(value, meaning);
            }

            json.WriteEndObject();
        }

        json.WriteEndObject();
    }
}
