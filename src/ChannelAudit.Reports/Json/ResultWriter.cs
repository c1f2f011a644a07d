using System.Text.Json;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Json;

/// <summary><c>recordings/ID/result.json</c>: everything known about a recording; every table can be made from it again.</summary>
/// <remarks>Numbers are written so that the same double is read back. Described by <c>docs/schemas/result.schema.json</c>.</remarks>
public static class ResultWriter
{
    /// <summary>Names the layout of the file; a layout that older readers would misread gets the next number.</summary>
    public const string Format = "channelaudit-result/1";

    /// <summary>The file as UTF-8 bytes.</summary>
    /// <exception cref="ArgumentException">When a number is not finite.</exception>
    public static byte[] Render(RecordingResult result, ResultOrigin origin)
    {
        using MemoryStream bytes = new();
        Write(result, origin, bytes);
        return bytes.ToArray();
    }

    /// <summary>Writes the file in UTF-8, part by part.</summary>
    /// <exception cref="ArgumentException">When a number is not finite.</exception>
    public static void Write(RecordingResult result, ResultOrigin origin, Stream stream)
    {
        using JsonText text = new(JsonText.BytesAPart, stream);
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject();
        json.WriteString("format", Format);
        json.WriteString("version", origin.Version);
        json.WriteString("criteria_sha256", origin.CriteriaSha256);
        json.WriteString("setup_sha256", origin.SetupSha256);
        WriteRecording(json, result);
        text.Rows("gaps", result.Gaps, WriteGap);
        text.Rows("trials", result.Trials, WriteTrial);
        json.WriteStartArray("channels");
        foreach (ChannelResult channel in result.Channels)
        {
            ChannelJson.Write(text, channel);
        }

        json.WriteEndArray();
        text.Rows("skipped", result.Skipped, WriteSkipped);
        PairJson.Write(text, result.Pairs);
        ImpedanceJson.Write(text, result.Impedance);
        SensitivityJson.Write(text, result.Sensitivity);
        text.Rows("information", result.Information, FindingJson.Write);
        text.Rows("warnings", result.Warnings, WriteWarning);
        WriteUnits(json);
        json.WriteEndObject();
        text.Finish();
    }

    private static void WriteRecording(Utf8JsonWriter json, RecordingResult result)
    {
        json.WriteString("id", result.Id);
        json.WriteString("path", result.Path);
        json.WriteString("sha256", result.Sha256);
        json.WriteString("recording_format", result.Format);
        json.WriteNumber("duration_s", result.DurationS);
        json.WriteString("participant", result.Participant);
        json.WriteString("group", result.Group);
        json.WriteStartObject("mains");
        json.WriteNumber("nominal_hz", result.Mains.NominalHz);
        json.WriteNumber("hz", result.Mains.Hz);
        json.WriteString("origin", result.Mains.Origin);
        json.WriteEndObject();
        json.WriteString("scoring", result.Scoring);
        json.WriteString("trials_from", result.TrialsFrom);
        json.WriteNumber("minimum_trials", result.MinimumTrials);
        if (!result.ExpectedConditions.IsEmpty)
        {
            json.WriteStartArray("expected_conditions");
            foreach (string condition in result.ExpectedConditions)
            {
                json.WriteStringValue(condition);
            }

            json.WriteEndArray();
        }
    }

    private static void WriteGap(Utf8JsonWriter json, RecordedGap gap)
    {
        json.WriteStartObject();
        json.WriteNumber("from_s", gap.FromS);
        json.WriteNumber("to_s", gap.ToS);
        json.WriteEndObject();
    }

    private static void WriteTrial(Utf8JsonWriter json, Trial trial)
    {
        json.WriteStartObject();
        json.WriteNumber("number", trial.Number);
        json.WriteString("label", trial.Label);
        json.WriteString("role", TrialRoleWords.Of(trial.Role));
        json.WriteNumber("onset_s", trial.OnsetS);
        json.WriteNumber("duration_s", trial.DurationS);
        json.WriteNumber("window_from_s", trial.WindowFromS);
        json.WriteNumber("window_to_s", trial.WindowToS);
        if (trial.BaselineFromS is { } baseline)
        {
            json.WriteNumber("baseline_from_s", baseline);
        }

        json.WriteEndObject();
    }

    private static void WriteSkipped(Utf8JsonWriter json, SkippedChannel skipped)
    {
        json.WriteStartObject();
        json.WriteString("label", skipped.Label);
        json.WriteString("cause", skipped.Cause);
        json.WriteEndObject();
    }

    private static void WriteWarning(Utf8JsonWriter json, Warning warning)
    {
        json.WriteStartObject();
        json.WriteString("file", warning.File);
        json.WriteString("place", warning.Place);
        json.WriteString("message", warning.Message);
        json.WriteEndObject();
    }

    private static void WriteUnits(Utf8JsonWriter json)
    {
        json.WriteStartObject("units");
        foreach (MeasureDefinition measure in MeasureCatalog.OfChannels.Concat(MeasureCatalog.OfDecisions))
        {
            json.WriteString(measure.Name, measure.Unit);
        }

        json.WriteEndObject();
    }
}
