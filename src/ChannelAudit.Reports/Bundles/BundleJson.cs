using System.Text.Json;
using ChannelAudit.Excerpts;
using ChannelAudit.Reports.Json;
using ChannelAudit.Setup;

namespace ChannelAudit.Reports.Bundles;

/// <summary>Writes <c>bundle.json</c>.</summary>
internal static class BundleJson
{
    /// <summary>The file as UTF-8 bytes.</summary>
    public static byte[] Render(BundleIndex index)
    {
        using JsonText text = new();
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject();
        json.WriteString("format", BundleIndex.Format);
        json.WriteString("version", index.Version);
        json.WriteString("criteria_sha256", index.CriteriaSha256);
        json.WriteGrade("least", index.Least);
        json.WriteNumber("margin_s", BundleIndex.MarginS);
        json.WriteStartArray("recordings");
        foreach (BundleRecording recording in index.Recordings)
        {
            json.WriteStartObject();
            json.WriteString("id", recording.Id);
            text.Rows("channels", recording.Channels, WriteFacts);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        text.Rows("exclusions", index.Exclusions, WriteExclusion);
        text.Rows("samples", index.Blocks, WriteBlock);
        text.Rows("omitted", index.Omitted, WriteOmission);
        text.Rows("entries", index.Entries, WriteEntry);
        json.WriteEndObject();
        return text.ToArray();
    }

    private static void WriteFacts(Utf8JsonWriter json, ChannelFacts facts)
    {
        json.WriteStartObject();
        json.WriteString("channel", facts.Name);
        json.WriteNumber("rate_numerator", facts.Rate.Numerator);
        json.WriteNumber("rate_denominator", facts.Rate.Denominator);
        json.WriteBoolean("microvolts", facts.IsMicrovolts);
        json.WriteString("not_raw", facts.NotRaw);
        json.WriteString("unit_doubt", facts.UnitDoubt);
        json.WriteNumberOrNull("lowpass_hz", facts.LowpassHz);
        json.WriteNumber("mains_nominal_hz", facts.NominalHz);
        json.WriteNumber("mains_hz", facts.LineHz);
        WriteNumbers(json, "notched_harmonics", facts.Notched.Select(harmonic => (double)harmonic));
        WriteScoring(json, facts.Scoring);
        json.WriteEndObject();
    }

    private static void WriteScoring(Utf8JsonWriter json, ScoringSetup scoring)
    {
        json.WriteStartObject("scoring");
        json.WriteNumberOrNull("highpass_hz", scoring.HighpassHz);
        json.WriteNumberOrNull("lowpass_hz", scoring.LowpassHz);
        WriteNumbers(json, "notches_hz", scoring.NotchesHz);
        json.WriteNumber("order", scoring.Order);
        json.WriteEndObject();
    }

    private static void WriteExclusion(Utf8JsonWriter json, Exclusion exclusion)
    {
        json.WriteStartObject();
        json.WriteString("recording", exclusion.Recording);
        json.WriteString("channel", exclusion.Channel);
        json.WriteNumberOrNull("trial", exclusion.Trial);
        json.WriteGrade("computed", exclusion.Computed);
        json.WriteGrade("final", exclusion.Final);
        json.WriteTexts("reasons", exclusion.Reasons);
        json.WriteEndObject();
    }

    private static void WriteBlock(Utf8JsonWriter json, BundleBlock block)
    {
        json.WriteStartObject();
        json.WriteString("path", block.Path);
        json.WriteString("recording", block.Recording);
        json.WriteString("channel", block.Channel);
        json.WriteNumber("trial", block.Trial);
        json.WriteStartArray("pieces");
        foreach ((long start, long length) in block.Pieces)
        {
            json.WriteStartObject();
            json.WriteNumber("start", start);
            json.WriteNumber("length", length);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteOmission(Utf8JsonWriter json, BundleOmission omission)
    {
        json.WriteStartObject();
        json.WriteString("recording", omission.Recording);
        json.WriteString("channel", omission.Channel);
        json.WriteNumber("trial", omission.Trial);
        json.WriteEndObject();
    }

    private static void WriteEntry(Utf8JsonWriter json, BundleEntry entry)
    {
        json.WriteStartObject();
        json.WriteString("path", entry.Path);
        json.WriteString("sha256", entry.Sha256);
        json.WriteNumber("bytes", entry.Bytes);
        json.WriteEndObject();
    }

    private static void WriteNumbers(Utf8JsonWriter json, string name, IEnumerable<double> numbers)
    {
        json.WriteStartArray(name);
        foreach (double number in numbers)
        {
            json.WriteNumberValue(number);
        }

        json.WriteEndArray();
    }
}
