using System.Text.Json;
using ChannelAudit.Reports.Json;
using ChannelAudit.Reports.Output;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Shares;

/// <summary><c>share.json</c> as text and back; described by <c>docs/schemas/share.schema.json</c>.</summary>
internal static class ShareJson
{
    private const string Format = "channelaudit-share/1";

    private static readonly string[] Figures = ["none", "summary", "all"];

    /// <summary>The file as UTF-8 bytes.</summary>
    public static byte[] Render(ShareManifest share)
    {
        using JsonText text = new();
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject();
        json.WriteString("format", Format);
        json.WriteString("version", share.Version);
        json.WriteNumber("share", share.Plan.Share.Number);
        json.WriteNumber("of", share.Plan.Share.Of);
        json.WriteString("figures", share.Plan.Figures);
        json.WriteBoolean("is_alone", share.Plan.IsAlone);
        text.Rows("inputs", share.Inputs, InputJson.Write);
        text.Rows("all", share.Plan.All, WriteEntry);
        text.Rows("done", share.Done, WriteDone);
        text.Rows("unread", share.Unread, AuditJson.WriteUnread);
        json.WriteEndObject();
        return text.ToArray();
    }

    /// <summary>Reads it.</summary>
    /// <param name="utf8">The file.</param>
    /// <param name="file">What it is called in errors.</param>
    /// <exception cref="ChannelAuditException">When it is not as we write it.</exception>
    public static ShareManifest Read(byte[] utf8, string file)
    {
        using JsonDocument document = Parse(utf8, file);
        JsonField root = new(document.RootElement, file, string.Empty);
        if (document.RootElement.ValueKind != JsonValueKind.Object || !string.Equals(root.TextOrNull("format"), Format, StringComparison.Ordinal))
        {
            throw ShareErrors.NotAShare(file);
        }

        RecordingShare share = RecordingShare.Parse(FormattableString.Invariant($"{root.Whole("share")}/{root.Whole("of")}")) ?? throw root.Wrong("share", "one of the shares");
        string figures = root.Text("figures");
        return new ShareManifest(
            root.Text("version"),
            new SharePlan(
                share,
                root.List("all", field => new RecordingEntry(Id(field), field.Text("path"), field.Text("path"))),
                Figures.Contains(figures, StringComparer.Ordinal) ? figures : throw root.Wrong("figures", "none, summary or all"),
                root.Flag("is_alone")),
            root.List("inputs", field => InputJson.Read(field) is var (input, sha256) && string.Equals(input.Sha256, sha256, StringComparison.Ordinal) ? input : throw field.Wrong("sha256", "that of the text")),
            root.List("done", field => (Id(field), field.Text("inputs_sha256"))),
            root.List("unread", field => new UnreadRecording(field.Text("path"), field.Text("message"), field.Text("hint"))));
    }

    private static JsonDocument Parse(byte[] utf8, string file)
    {
        try
        {
            return StrictJson.Parse(utf8);
        }
        catch (JsonException)
        {
            throw ShareErrors.NotAShare(file);
        }
    }

    // It becomes the name of a folder.
    private static string Id(JsonField field) => field.Text("id") is var id && SafePath.IsName(id) ? id : throw field.Wrong("id", "the id of a recording");

    private static void WriteEntry(Utf8JsonWriter json, RecordingEntry entry)
    {
        json.WriteStartObject();
        json.WriteString("id", entry.Id);
        json.WriteString("path", entry.RelativePath);
        json.WriteEndObject();
    }

    private static void WriteDone(Utf8JsonWriter json, (string Id, string InputsSha256) done)
    {
        json.WriteStartObject();
        json.WriteString("id", done.Id);
        json.WriteString("inputs_sha256", done.InputsSha256);
        json.WriteEndObject();
    }
}
