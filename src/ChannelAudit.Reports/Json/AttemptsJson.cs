using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Text;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Json;

/// <summary><c>attempts.json</c>: every pilot of a preparation, kept over the redos and listed in no audit, so that nothing clears it away.</summary>
public static class AttemptsJson
{
    /// <summary>The name of the file.</summary>
    public const string FileName = "attempts.json";

    private const string Format = "channelaudit-attempts/1";

    /// <summary>The file as UTF-8 bytes.</summary>
    /// <param name="attempts">The attempts by number.</param>
    public static byte[] Render(ImmutableArray<PilotAttempt> attempts)
    {
        using JsonText text = new();
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject();
        json.WriteString("format", Format);
        text.Rows("attempts", attempts, Write);
        json.WriteEndObject();
        return text.ToArray();
    }

    /// <summary>Reads it back from a folder; empty when there is none.</summary>
    /// <exception cref="ChannelAuditException">When it is not what we wrote, or cannot be read.</exception>
    public static ImmutableArray<PilotAttempt> Read(string folder)
    {
        string path = Path.Combine(folder, FileName);
        if (!File.Exists(path))
        {
            return [];
        }

        try
        {
            using JsonDocument document = StrictJson.Parse(PlainFile.ReadAllBytes(path));
            JsonField root = new(document.RootElement, FileName, string.Empty);
            return document.RootElement.ValueKind == JsonValueKind.Object && string.Equals(root.TextOrNull("format"), Format, StringComparison.Ordinal)
                ? root.List("attempts", Read)
                : throw OutputErrors.WrongValue(FileName, "format", Format);
        }
        catch (JsonException)
        {
            throw OutputErrors.WrongValue(FileName, "file", "JSON");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotRead(path, exception);
        }
    }

    private static void Write(Utf8JsonWriter json, PilotAttempt attempt)
    {
        json.WriteStartObject();
        json.WriteNumber("number", attempt.Number);
        json.WriteString("recording", attempt.Recording);
        json.WriteString("sha256", attempt.Sha256);
        json.WriteString("answer", AnswerWords.Code(attempt.Answer));
        json.WriteString("started_because", attempt.StartedBecause);
        json.WriteTexts("joints", attempt.Joints);
        json.WriteTexts("next", attempt.Next.Select(StepWords.Code));
        json.WriteStartArray("sites");
        foreach (AttemptSite site in attempt.Sites)
        {
            json.WriteStartObject();
            json.WriteString("name", site.Name);
            json.WriteGrade("verdict", site.Verdict);
            json.WriteTexts("reasons", site.Reasons);
            json.WriteNumberOrNull("rest_uv", site.RestUv);
            json.WriteNumberOrNull("line_uv", site.LineUv);
            json.WriteNumberOrNull("task_db", site.TaskDecibels);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static PilotAttempt Read(JsonField field) => new(
        field.Whole("number"),
        field.Text("recording"),
        field.Text("sha256"),
        AnswerWords.FromCode(field.Text("answer")) ?? throw field.Wrong("answer", "an answer"),
        field.List("sites", ReadSite),
        field.Texts("joints"),
        [.. field.Texts("next").Select(code => StepWords.FromCode(code) ?? throw field.Wrong("next", "known steps"))],
        field.TextOrNull("started_because"));

    private static AttemptSite ReadSite(JsonField field) => new(
        field.Text("name"),
        field.Grade("verdict"),
        field.Texts("reasons"),
        field.NumberOrNull("rest_uv"),
        field.NumberOrNull("line_uv"),
        field.NumberOrNull("task_db"));
}
