using ChannelAudit.Criteria;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Silence;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Runs;
using ChannelAudit.Setup;

namespace ChannelAudit.Cli.Silence;

/// <summary>Where the files of a study go: beside the recording's results in an audit, or into a folder of their own.</summary>
/// <param name="Folder">The folder as given.</param>
/// <param name="Id">The recording's id in the audit; null for a folder of the study's own.</param>
/// <param name="IsAlone">Whether the audit is over this recording alone.</param>
internal sealed record SilencePlace(string Folder, string? Id, bool IsAlone)
{
    /// <summary>Finds it, before any work is done.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="recording">The recording's file.</param>
    /// <param name="setup">What was where.</param>
    /// <param name="criteria">The limits in force.</param>
    /// <exception cref="ChannelAuditException">When the folder is somebody else's, or an audit of something else.</exception>
    public static SilencePlace Of(string folder, string recording, StudySetup setup, AuditCriteria criteria)
    {
        if (!OutputFolder.IsAudit(folder))
        {
            RequireOurs(folder);
            return new SilencePlace(folder, null, false);
        }

        StoredAudit audit = StoredAudit.Open(folder);
        string sha256 = InputKey.HashOf(recording);
        StoredRecording found = audit.Recordings.FirstOrDefault(one => string.Equals(one.Sha256, sha256, StringComparison.Ordinal))
            ?? throw SilenceErrors.NotInAudit(folder, recording);
        if (!string.Equals(audit.Criteria.Sha256, criteria.Sha256, StringComparison.Ordinal))
        {
            throw SilenceErrors.OtherInputs(folder, "criteria");
        }

        return string.Equals(audit.Setup.Sha256, setup.Sha256, StringComparison.Ordinal)
            ? new SilencePlace(folder, found.Id, audit.Recordings.Length == 1)
            : throw SilenceErrors.OtherInputs(folder, "setup");
    }

    /// <summary>The path of a file below the folder.</summary>
    public string PathOf(string file) => Id is { } id ? AuditWriter.Place(id, file) : file;

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
