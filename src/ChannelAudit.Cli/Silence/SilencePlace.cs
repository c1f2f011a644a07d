using ChannelAudit.Criteria;
using ChannelAudit.Detectability;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Silence;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Runs;
using ChannelAudit.Setup;

namespace ChannelAudit.Cli.Silence;

/// <summary>Where the files of a study go: beside the recording's results in an audit, or into a folder of their own.</summary>
/// <param name="Folder">The folder as given.</param>
/// <param name="Entry">The recording, as the audit calls it when there is one.</param>
/// <param name="IsAudit">Whether the folder is an audit's.</param>
internal sealed record SilencePlace(string Folder, RecordingEntry Entry, bool IsAudit)
{
    /// <summary>Finds it, before any work is done.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="recording">The recording's file.</param>
    /// <param name="setup">What was where.</param>
    /// <param name="criteria">The limits in force.</param>
    /// <param name="events">The events table, or null.</param>
    /// <exception cref="ChannelAuditException">When the folder is somebody else's, or an audit of something else.</exception>
    public static SilencePlace Of(string folder, RecordingEntry recording, StudySetup setup, AuditCriteria criteria, string? events)
    {
        if (!OutputFolder.IsAudit(folder))
        {
            RequireOurs(folder);
            return new SilencePlace(folder, recording, false);
        }

        StoredAudit audit = Opened(folder);
        string sha256 = InputKey.HashOf(recording.FilePath);
        StoredRecording found = audit.Recordings.FirstOrDefault(one => string.Equals(one.Sha256, sha256, StringComparison.Ordinal))
            ?? throw SilenceErrors.NotInAudit(folder, recording.FilePath);
        RequireSame(folder, "criteria", audit.Criteria.Sha256, criteria.Sha256);
        RequireSame(folder, "setup", audit.Setup.Sha256, setup.Sha256);

        // The id and the path that the audit knows: a setup may say something of just this path.
        RecordingEntry entry = recording with { Id = found.Id, RelativePath = found.Path };
        RequireSame(folder, "events", TrialsKey.Of(audit.ResultOf(found).Trials), DetectabilityStudy.TrialsOf(entry, setup, events));
        return new SilencePlace(folder, entry, true);
    }

    /// <summary>The path of a file below the folder.</summary>
    public string PathOf(string file) => IsAudit ? AuditWriter.Place(Entry.Id, file) : file;

    private static StoredAudit Opened(string folder)
    {
        StoredAudit audit = StoredAudit.Open(folder);
        return PilotFiles.AreIn(folder) ? throw SilenceErrors.IsPilot(folder)
            : string.Equals(audit.Version, ProductVersion.Text, StringComparison.Ordinal) ? audit
            : throw SilenceErrors.OtherVersion(folder, audit.Version);
    }

    private static void RequireSame(string folder, string what, string? audited, string? given)
    {
        if (!string.Equals(audited, given, StringComparison.Ordinal))
        {
            throw SilenceErrors.OtherInputs(folder, what);
        }
    }

    private static void RequireOurs(string folder)
    {
        if (File.Exists(folder))
        {
            OutputFolder.Check(folder);
        }

        if (Directory.Exists(folder)
            && Directory.EnumerateFileSystemEntries(folder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)
                .FirstOrDefault(name => !SilenceFiles.All.Contains(name, StringComparer.Ordinal)) is { } other)
        {
            throw SilenceErrors.NotOurs(folder, other);
        }
    }
}
