using System.Text.Json;
using ChannelAudit.Detectability;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Output;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Silence;

/// <summary><c>detectability.json</c>: the study with the inputs that it holds for.</summary>
public static class SilenceJson
{
    /// <summary>Names the layout of the file.</summary>
    public const string Format = "channelaudit-detectability/1";

    /// <summary>The file as UTF-8 bytes.</summary>
    /// <param name="result">The study.</param>
    /// <param name="version">The version of the program.</param>
    public static byte[] Render(DetectabilityResult result, string version)
    {
        ArgumentNullException.ThrowIfNull(result);
        using JsonText text = new();
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject();
        json.WriteString("format", Format);
        json.WriteString("version", version);
        json.WriteString("id", result.Id);
        json.WriteString("sha256", result.Sha256);
        json.WriteString("criteria_sha256", result.CriteriaSha256);
        json.WriteString("setup_sha256", result.SetupSha256);
        json.WriteString("trials_sha256", result.TrialsSha256);
        json.WriteNumber("used_s", result.UsedS);
        json.WriteNumber("duration_s", result.DurationS);
        json.WriteNumber("repeats", result.Repeats);
        json.WriteStartArray("faults");
        foreach (DetectedFault fault in result.Faults)
        {
            WriteFault(text, fault);
        }

        json.WriteEndArray();
        json.WriteEndObject();
        return text.ToArray();
    }

    /// <summary>Reads it back.</summary>
    /// <param name="utf8">The file's bytes.</param>
    /// <param name="file">Its name, for messages.</param>
    /// <exception cref="ChannelAuditException">When it is not such a file.</exception>
    public static (string Version, DetectabilityResult Result) Read(ReadOnlyMemory<byte> utf8, string file)
    {
        try
        {
            using JsonDocument document = StrictJson.Parse(utf8);
            JsonField root = new(document.RootElement, file, string.Empty);
            if (document.RootElement.ValueKind != JsonValueKind.Object || !string.Equals(root.TextOrNull("format"), Format, StringComparison.Ordinal))
            {
                throw OutputErrors.OtherLayout(file, "none", Format);
            }

            return (root.Text("version"), new DetectabilityResult
            {
                Id = root.Text("id"),
                Sha256 = root.Text("sha256"),
                CriteriaSha256 = root.Text("criteria_sha256"),
                SetupSha256 = root.TextOrNull("setup_sha256"),
                TrialsSha256 = root.Text("trials_sha256"),
                UsedS = root.Number("used_s"),
                DurationS = root.Number("duration_s"),
                Repeats = root.Whole("repeats"),
                Faults = root.List("faults", FaultOf),
            });
        }
        catch (JsonException exception)
        {
            throw OutputErrors.NotJson(file, (exception.LineNumber ?? 0) + 1, exception);
        }
    }

    private static void WriteFault(JsonText text, DetectedFault fault)
    {
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject();
        json.WriteString("name", fault.Name);
        json.WriteString("reason", fault.Reason);
        json.WriteString("title", fault.Title);
        json.WriteString("unit", fault.Unit);
        json.WriteNumberOrNull("found_half_from", fault.SizeFoundAt(SilenceWords.Half));
        json.WriteNumberOrNull("found_mostly_from", fault.SizeFoundAt(SilenceWords.Mostly));
        json.WriteString("not_assessed", fault.NotAssessed);
        text.Rows("points", fault.Points, WritePoint);
        json.WriteEndObject();
    }

    private static void WritePoint(Utf8JsonWriter json, DetectedPoint point)
    {
        json.WriteStartObject();
        json.WriteNumber("size", point.Size);
        json.WriteNumber("places", point.Places);
        json.WriteNumber("found", point.Found);
        json.WriteNumber("rejected", point.Rejected);
        json.WriteEndObject();
    }

    private static DetectedFault FaultOf(JsonField field) => new(
        field.Text("name"),
        field.Text("reason"),
        field.Text("title"),
        field.Text("unit"),
        field.List("points", point => new DetectedPoint(point.Number("size"), point.Whole("places"), point.Whole("found"), point.Whole("rejected"))),
        field.TextOrNull("not_assessed"));
}
