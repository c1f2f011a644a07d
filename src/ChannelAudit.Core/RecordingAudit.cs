using ChannelAudit.Criteria;
using ChannelAudit.Impedance;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Setup;

namespace ChannelAudit;

/// <summary>From a file on disk to its result: opens it, finds what stands beside it, chooses the trials, and audits.</summary>
public static class RecordingAudit
{
    /// <summary>Audits a file.</summary>
    /// <param name="entry">The file and its id.</param>
    /// <param name="setup">What was where.</param>
    /// <param name="criteria">Limits in force.</param>
    /// <param name="eventsFile">An events table given by name, or null.</param>
    /// <param name="cancellation">Checked for every block of samples.</param>
    /// <param name="withViews">Whether pictures of channels will be drawn.</param>
    /// <param name="impedance">Readings of this recording's electrodes, and maybe of others, or null; they change no verdict.</param>
    /// <param name="sha256">The SHA-256 of the file's bytes, where it is known; null: found here.</param>
    /// <param name="threads">Threads that may work on it: from 2 on two do. The result is the same.</param>
    /// <exception cref="ChannelAuditException">When the file cannot be read, or setup, events or readings do not fit it.</exception>
    public static RecordingResult Of(
        RecordingEntry entry,
        StudySetup setup,
        AuditCriteria criteria,
        string? eventsFile,
        CancellationToken cancellation,
        bool withViews = false,
        ImpedanceLog? impedance = null,
        string? sha256 = null,
        int threads = 1)
    {
        using PreparedRecording prepared = PreparedRecording.Open(entry, setup, eventsFile);
        ImpedanceReport? readings = prepared.Readings(impedance);
        Recording recording = threads > 1 ? prepared.Recording.OnTwoThreads : prepared.Recording;
        return Audit.Of(recording, prepared.Input(criteria, withViews, sha256), cancellation) with { Impedance = readings };
    }
}
