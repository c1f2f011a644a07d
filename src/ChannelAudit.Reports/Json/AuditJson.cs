using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Criteria;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Json;

/// <summary><c>audit.json</c>: the run, with what it was made from and what it wrote; described by <c>docs/schemas/audit.schema.json</c>.</summary>
public static class AuditJson
{
    /// <summary>What the format of every version starts with.</summary>
    internal const string FormatName = "channelaudit-audit/";

    /// <summary>Names the layout of the file.</summary>
    public const string Format = FormatName + "1";

    /// <summary>The file as UTF-8 bytes.</summary>
    /// <param name="run">With what the recordings were audited.</param>
    /// <param name="digest">The recordings.</param>
    /// <param name="files">Every other file written.</param>
    public static byte[] Render(AuditRun run, RunDigest digest, ImmutableArray<OutputFile> files)
    {
        using JsonText text = new();
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject();
        json.WriteString("format", Format);
        json.WriteString("version", run.Version);
        WriteCriteria(text, run.Criteria);
        json.WriteStartObject("setup");
        json.WriteString("file", run.Setup.FileName);
        json.WriteString("sha256", run.Setup.Sha256);
        json.WriteEndObject();
        json.WriteStartObject("impedance");
        json.WriteString("file", run.Impedance?.FileName);
        json.WriteString("sha256", run.Impedance?.Sha256);
        json.WriteEndObject();
        text.Rows("inputs", run.Inputs, InputJson.Write);
        WriteCounts(json, digest);
        DecisionsJson.Write(text, digest.Decisions);
        text.Rows("recordings", digest.Recordings, WriteRecording);
        StudyJson.Write(text, digest.Odd);
        text.Rows("unread", digest.Unread, WriteUnread);
        text.Rows("warnings", Warnings(run, digest), WriteWarning);
        text.Rows("files", files, WriteFile);
        json.WriteEndObject();
        return text.ToArray();
    }

    private static void WriteCriteria(JsonText text, AuditCriteria criteria)
    {
        Utf8JsonWriter json = text.Writer;
        json.WriteStartObject("criteria");
        json.WriteString("file", criteria.FileName);
        json.WriteString("sha256", criteria.Sha256);
        FreezeJson.Write(json, criteria);
        text.Rows("limits", criteria.All, CriterionJson.Write);
        json.WriteEndObject();
    }

    private static void WriteCounts(Utf8JsonWriter json, RunDigest digest)
    {
        json.WriteStartObject("counts");
        json.WriteNumber("recordings", digest.Recordings.Length);
        json.WriteNumber("unread", digest.Unread.Length);
        WriteVerdicts(json, "channels", digest.Channels);
        WriteVerdicts(json, "trials", digest.Trials);
        if (digest.Decisions is { Mark.Lines: > 0 })
        {
            WriteVerdicts(json, "computed_channels", digest.ComputedChannels);
            WriteVerdicts(json, "computed_trials", digest.ComputedTrials);
        }

        json.WriteEndObject();
    }

    private static void WriteRecording(Utf8JsonWriter json, RecordingDigest recording)
    {
        json.WriteStartObject();
        json.WriteString("id", recording.Id);
        json.WriteString("path", recording.Path);
        json.WriteString("sha256", recording.Sha256);
        json.WriteString("inputs_sha256", recording.Stamp.InputsSha256);
        json.WriteString("figures", recording.Stamp.Figures);
        json.WriteString("participant", recording.Participant);
        json.WriteString("group", recording.Group);
        json.WriteString("recording_format", recording.Format);
        json.WriteNumber("duration_s", recording.DurationS);
        WriteVerdicts(json, "channels", recording.ChannelCounts);
        WriteVerdicts(json, "trials", recording.TrialCounts);
        json.WriteStartArray("by_channel");
        foreach (ChannelDigest channel in recording.Channels)
        {
            WriteChannel(json, channel);
        }

        json.WriteEndArray();
        json.WriteTexts("information", recording.Information);
        json.WriteEndObject();
    }

    private static void WriteChannel(Utf8JsonWriter json, ChannelDigest channel)
    {
        json.WriteStartObject();
        json.WriteString("channel", channel.Name);
        json.WriteString("verdict", VerdictWords.Code(channel.Verdict));
        json.WriteTexts("reasons", channel.Reasons);
        WriteVerdicts(json, "trials", channel.Trials);
        json.WriteStartArray("by_reason");
        foreach (ReasonTrials reason in channel.ByReason)
        {
            json.WriteStartObject();
            json.WriteString("reason", reason.Reason);
            json.WriteNumber("trials", reason.Trials);
            json.WriteString("note", reason.Note);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (channel.IsDecided)
        {
            json.WriteString("computed", VerdictWords.Code(channel.Computed));
            WriteVerdicts(json, "computed_trials", channel.ComputedTrials);
        }

        json.WriteEndObject();
    }

    private static void WriteVerdicts(Utf8JsonWriter json, string name, VerdictCounts counts)
    {
        json.WriteStartObject(name);
        json.WriteNumber("pass", counts.Pass);
        json.WriteNumber("questionable", counts.Questionable);
        json.WriteNumber("reject", counts.Reject);
        json.WriteEndObject();
    }

    internal static void WriteUnread(Utf8JsonWriter json, UnreadRecording unread)
    {
        json.WriteStartObject();
        json.WriteString("path", unread.Path);
        json.WriteString("message", unread.Message);
        json.WriteString("hint", unread.Hint);
        json.WriteEndObject();
    }

    private static IEnumerable<(string? Recording, Warning Warning)> Warnings(AuditRun run, RunDigest digest) => run.Warnings
        .Select(warning => ((string?)null, warning))
        .Concat(digest.Warnings.Select(entry => ((string?)entry.Recording, entry.Warning)));

    private static void WriteWarning(Utf8JsonWriter json, (string? Recording, Warning Warning) entry)
    {
        json.WriteStartObject();
        json.WriteString("recording", entry.Recording);
        json.WriteString("file", entry.Warning.File);
        json.WriteString("place", entry.Warning.Place);
        json.WriteString("message", entry.Warning.Message);
        json.WriteEndObject();
    }

    internal static void WriteFile(Utf8JsonWriter json, OutputFile file)
    {
        json.WriteStartObject();
        json.WriteString("path", file.Path);
        json.WriteString("sha256", file.Sha256);
        json.WriteEndObject();
    }
}
