using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Studies;

namespace ChannelAudit.Reports.Json;

/// <summary>Reads the recordings of an <c>audit.json</c> back.</summary>
internal static class AuditReading
{
    /// <summary>The digests of its recordings; empty when it was written before they stood in it, or names one twice.</summary>
    /// <param name="root">The file.</param>
    /// <exception cref="ChannelAuditException">When a value is of the wrong kind.</exception>
    public static ImmutableArray<RecordingDigest> Recordings(JsonField root)
    {
        ILookup<string, Warning> warnings = root.List("warnings", Warning)
            .Where(entry => entry.Recording is not null)
            .ToLookup(entry => entry.Recording!, entry => entry.Warning, StringComparer.Ordinal);
        ImmutableArray<RecordingDigest> all = root.List("recordings", field => Recording(field, warnings));
        return all.DistinctBy(recording => recording.Id, StringComparer.Ordinal).Count() == all.Length ? all : [];
    }

    /// <summary>The recordings that are other than the rest.</summary>
    public static ImmutableArray<StudyFinding> Odd(JsonField root) => root.List("odd", field => new StudyFinding(
        field.Text("kind"), field.Texts("recordings"), field.TextOrNull("channel"), field.Text("text"), field.Text("to_do")));

    /// <summary>A warning, and the recording that it belongs to, if any.</summary>
    public static (string? Recording, Warning Warning) Warning(JsonField field) =>
        (field.TextOrNull("recording"), new Warning(field.Text("file"), field.Text("place"), field.Text("message")));

    private static RecordingDigest Recording(JsonField field, ILookup<string, Warning> warnings) => new()
    {
        Id = field.Text("id"),
        Path = field.Text("path"),
        Sha256 = field.Text("sha256"),
        Stamp = new RecordingStamp(field.Text("inputs_sha256"), field.Text("figures")),
        Participant = field.TextOrNull("participant"),
        Group = field.TextOrNull("group"),
        Format = field.Text("recording_format"),
        DurationS = field.Number("duration_s"),
        Channels = field.List("by_channel", Channel),
        TooFew = [],
        Information = field.Texts("information"),
        Warnings = [.. warnings[field.Text("id")]],
    };

    private static ChannelDigest Channel(JsonField field)
    {
        ChannelDigest channel = new(field.Text("channel"), field.Grade("verdict"), field.Texts("reasons"), Counts(field.Object("trials")))
        {
            ByReason = field.Has("by_reason") ? field.List("by_reason", one => new ReasonTrials(one.Text("reason"), one.Whole("trials"), one.TextOrNull("note"))) : [],
        };
        return field.GradeOrNull("computed") is { } computed
            ? channel with { IsDecided = true, Computed = computed, ComputedTrials = Counts(field.Object("computed_trials")) }
            : channel;
    }

    private static VerdictCounts Counts(JsonField counts) => new(counts.Whole("pass"), counts.Whole("questionable"), counts.Whole("reject"));
}
