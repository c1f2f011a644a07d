using System.Collections.Immutable;
using ChannelAudit.Decisions;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Silence;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Runs;
using ChannelAudit.Text;

namespace ChannelAudit.Reports.Verifying;

/// <summary>The files that an audit lists, against those that are there.</summary>
public static class ListedFiles
{
    private static readonly EnumerationOptions NoLinks = new() { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint };

    /// <summary>Whether each listed file is there with the bytes that are listed.</summary>
    public static AuditCheck Check(RecordedRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        const string name = "files";
        List<string> faults = [];
        foreach (OutputFile file in run.Files)
        {
            string path = Path.Combine(run.Audit.Folder, file.Path);
            string? fault = !File.Exists(path) ? "is missing" : !string.Equals(InputKey.HashOf(path), file.Sha256, StringComparison.Ordinal) ? "has other bytes than audit.json lists" : null;
            if (fault is not null)
            {
                faults.Add($"{OneLine.Of(file.Path)} {fault}");
            }
        }

        return faults.Count == 0
            ? new AuditCheck(name, CheckState.Ok, $"{Quantities.Many(run.Files.Length, "file")} with the bytes that audit.json lists")
            : new AuditCheck(name, CheckState.Differs, string.Join("; ", faults.Take(5)) + (faults.Count > 5 ? $"; and {(faults.Count - 5).Plain()} more" : string.Empty));
    }

    /// <summary>Files in the folder that no audit lists; null when there are none.</summary>
    public static AuditCheck? Others(RecordedRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        HashSet<string> known = [.. run.Files.Select(file => file.Path)];
        ImmutableArray<string> others =
        [
            .. Directory.EnumerateFiles(run.Audit.Folder, "*", NoLinks)
                .Select(file => Path.GetRelativePath(run.Audit.Folder, file).Replace(Path.DirectorySeparatorChar, '/'))
                .Where(file => !known.Contains(file) && !IsOurs(file) && StudyOf(file, run) is null)
                .Order(StringComparer.Ordinal),
        ];
        return others.IsEmpty ? null : new AuditCheck("other files", CheckState.NotChecked, $"no part of the audit: {OneLine.List(others)}");
    }

    /// <summary>What <c>detectability</c> left in the folder, which no audit lists; null when there is nothing.</summary>
    public static AuditCheck? Studies(RecordedRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        string[] recordings = [.. run.Audit.Recordings.Select(recording => recording.Id).Where(id => File.Exists(Path.Combine(run.Audit.Folder, AuditWriter.Place(id, SilenceFiles.Json))))];
        return recordings.Length == 0
            ? null
            : new AuditCheck("detectability", CheckState.NotChecked, $"what it found in {OneLine.List(recordings)} is taken as it is: run it again to see whether it comes out the same");
    }

    private static string? StudyOf(string file, RecordedRun run) =>
        file.Split('/') is ["recordings", string id, string name] && SilenceFiles.All.Contains(name, StringComparer.Ordinal)
            ? run.Audit.Recordings.FirstOrDefault(recording => string.Equals(recording.Id, id, StringComparison.Ordinal))?.Id
            : null;

    private static bool IsOurs(string file) => file is PreviousAudit.FileName or Ledger.FileName or Ledger.TornName or Ledger.LockName;
}
