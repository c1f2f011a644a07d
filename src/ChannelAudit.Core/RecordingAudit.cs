using ChannelAudit.Criteria;
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
    /// <exception cref="ChannelAuditException">When the file cannot be read, or setup or events do not fit it.</exception>
    public static RecordingResult Of(
        RecordingEntry entry, StudySetup setup, AuditCriteria criteria, string? eventsFile, CancellationToken cancellation, bool withViews = false)
    {
        using PreparedRecording prepared = PreparedRecording.Open(entry, setup, eventsFile);
        return Audit.Of(prepared.Recording, prepared.Input(criteria, withViews), cancellation);
    }
}
