using ChannelAudit.Impedance;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Results;
using ChannelAudit.Setup;

namespace ChannelAudit.Reports.Deciding;

/// <summary>Brings tables and pages of an audit up to its last decision and study of planted faults, from the stored results: no recording is needed for it.</summary>
/// <remarks>The files are those that <c>screen</c> would write from the recordings with this ledger, byte for byte.</remarks>
public static class AuditUpdate
{
    private const int LockTries = 600;
    private const int LockWaitMs = 100;

    /// <summary>Brings them up to date; does nothing when they are.</summary>
    /// <param name="folder">The folder of an audit.</param>
    /// <param name="version">The version of the program.</param>
    /// <param name="cancel">Ends it; nothing has changed then.</param>
    /// <returns>Whether anything was written.</returns>
    /// <exception cref="ChannelAuditException">
    /// When files are not as they were written, another run writes there, or the operating system refuses. Decisions are never touched: the next decision, or
    /// <c>screen</c>, brings tables and pages up to date.
    /// </exception>
    public static bool Run(string folder, string version, CancellationToken cancel)
    {
        using AuditFolder place = Opened(folder, LockTries, cancel);

        // Read behind the lock: another decision may just have brought everything up to date.
        StoredAudit audit = DecisionDesk.Open(folder, version);
        if (audit.Decisions.Mark == audit.Decided)
        {
            return false;
        }

        Remake(audit, place, cancel);
        return true;
    }

    /// <summary>Puts a study of planted faults beside a recording's results, and makes the pages again that show it.</summary>
    /// <param name="folder">The folder of an audit.</param>
    /// <param name="version">The version of the program.</param>
    /// <param name="files">The study's files, by their paths below the folder.</param>
    /// <param name="cancel">Ends it before the study is in its place; nothing has changed then.</param>
    /// <exception cref="ChannelAuditException">As for <see cref="Run"/>. The study may be in its place by then: the next <c>screen</c> shows it.</exception>
    public static void WithStudy(string folder, string version, IReadOnlyList<(string Path, byte[] Bytes)> files, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(files);
        using AuditFolder place = Opened(folder, LockTries, cancel);
        StoredAudit audit = DecisionDesk.Open(folder, version);
        using (OutputBatch batch = new(folder))
        {
            foreach ((string path, byte[] bytes) in files)
            {
                batch.Add(path, bytes);
            }

            cancel.ThrowIfCancellationRequested();
            batch.Commit();
        }

        Remake(audit, place, CancellationToken.None);
    }

    private static void Remake(StoredAudit audit, AuditFolder place, CancellationToken cancel)
    {
        bool isAlone = !place.Previous.Files.Any(file => file.Path.StartsWith("recordings/", StringComparison.Ordinal) && file.Path.EndsWith("/report.html", StringComparison.Ordinal));
        bool draws = place.Previous.Files.Any(file => string.Equals(file.Path, SensitivityFigure.FileName, StringComparison.Ordinal));
        using RunWriter writer = new(RunOf(audit), place, isAlone, draws, ParquetTables.AreAmong(place.Previous.Files));
        foreach (StoredRecording stored in audit.Recordings.OrderBy(recording => recording.Id, StringComparer.Ordinal))
        {
            cancel.ThrowIfCancellationRequested();
            RecordingStamp? stamp = place.Previous.Recordings.FirstOrDefault(recording => string.Equals(recording.Id, stored.Id, StringComparison.Ordinal))?.Stamp;
            RecordingResult result = (stamp is null ? null : place.TakeOver(stored.Id, stamp, writer.Needed)) ?? throw DecidingErrors.Changed(audit.Folder, stored.Id);
            writer.Add(result, stamp!);
        }

        writer.Finish(audit.Unread, cancel);
    }

    private static AuditFolder Opened(string folder, int left, CancellationToken cancel) =>
        left == 0 ? AuditFolder.Open(folder) : AuditFolder.TryOpen(folder) ?? AfterAWait(folder, left, cancel);

    private static AuditFolder AfterAWait(string folder, int left, CancellationToken cancel)
    {
        cancel.WaitHandle.WaitOne(LockWaitMs);
        cancel.ThrowIfCancellationRequested();
        return Opened(folder, left - 1, cancel);
    }

    // Outputs name the files that an audit was made with, and their hashes; what stands in them was used up by the results.
    private static AuditRun RunOf(StoredAudit audit) => new()
    {
        Version = audit.Version,
        Criteria = audit.Criteria,
        Setup = new StudySetup { FileName = audit.Setup.FileName, Sha256 = audit.Setup.Sha256 },
        Impedance = audit.Impedance is { FileName: { } file, Sha256: { } sha256 } ? new ImpedanceLog { FileName = file, Sha256 = sha256, Readings = [] } : null,
        Inputs = audit.Inputs,
        Warnings = audit.Warnings,
    };
}
