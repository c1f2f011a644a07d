using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Json;
using ChannelAudit.Runs;
using ChannelAudit.Studies;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Output;

/// <summary>What an audit already standing in a folder says of itself.</summary>
/// <param name="Files">The files that it lists; empty when the folder is new, or holds nothing but left-overs of a broken run.</param>
/// <param name="Recordings">Its recordings; empty when none could be taken over.</param>
/// <param name="Odd">Those that are other than the rest.</param>
/// <param name="HasUnread">Whether it could not read a recording.</param>
/// <param name="Decisions">The decisions that it was made with; null when there were none.</param>
internal sealed record PreviousAudit(
    ImmutableArray<OutputFile> Files, ImmutableArray<RecordingDigest> Recordings, ImmutableArray<StudyFinding> Odd, bool HasUnread, DecisionsDigest? Decisions)
{
    /// <summary>The name of the file that makes a folder an audit.</summary>
    public const string FileName = "audit.json";

    private static readonly PreviousAudit None = new([], [], [], false, null);

    /// <summary>Reads it.</summary>
    /// <exception cref="ChannelAuditException">When the folder is neither empty nor an audit, or cannot be read.</exception>
    public static PreviousAudit Of(string folder)
    {
        if (File.Exists(folder))
        {
            throw OutputErrors.NotAFolder(folder);
        }

        if (!Directory.Exists(folder))
        {
            return None;
        }

        try
        {
            string audit = Path.Combine(folder, FileName);
            return File.Exists(audit) ? Read(folder, PlainFile.ReadAllBytes(audit)) : RequireEmpty(folder);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw OutputErrors.CannotRead(folder, exception);
        }
    }

    private static PreviousAudit Read(string folder, byte[] utf8)
    {
        try
        {
            using JsonDocument document = StrictJson.Parse(utf8);
            JsonField root = new(document.RootElement, FileName, string.Empty);
            if (document.RootElement.ValueKind != JsonValueKind.Object || root.TextOrNull("format")?.StartsWith(AuditJson.FormatName, StringComparison.Ordinal) != true)
            {
                throw OutputErrors.NotAnAudit(folder, FileName);
            }

            (ImmutableArray<RecordingDigest> recordings, ImmutableArray<StudyFinding> odd) = RecordingsOf(root);
            return new PreviousAudit(
                root.List("files", file => new OutputFile(file.Text("path"), file.TextOrNull("sha256") ?? string.Empty)),
                recordings,
                odd,
                root.ObjectOrNull("counts")?.WholeOrNull("unread") != 0,
                DecisionsJson.Read(root));
        }
        catch (JsonException)
        {
            throw OutputErrors.NotAnAudit(folder, FileName);
        }
    }

    // An audit of an older version, or one that a person has changed, is made anew from its recordings.
    private static (ImmutableArray<RecordingDigest> Recordings, ImmutableArray<StudyFinding> Odd) RecordingsOf(JsonField root)
    {
        try
        {
            return ([.. AuditReading.Recordings(root).Where(recording => recording.Stamp.InputsSha256.Length > 0 && SafePath.IsName(recording.Id))], AuditReading.Odd(root));
        }
        catch (ChannelAuditException)
        {
            return ([], []);
        }
    }

    private static PreviousAudit RequireEmpty(string folder) => OutputFolder.FirstForeign(folder) is { } foreign ? throw OutputErrors.NotAnAudit(folder, foreign) : None;
}
