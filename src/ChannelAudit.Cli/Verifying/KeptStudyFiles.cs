using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Silence;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Reports.Verifying;

namespace ChannelAudit.Cli.Verifying;

/// <summary>What <c>detectability</c> left in an audit: taken as it is, since its page shows it and planting takes minutes.</summary>
/// <param name="run">The audit.</param>
/// <param name="scratch">Where the audit is made again.</param>
internal sealed class KeptStudyFiles(RecordedRun run, ScratchFolder scratch)
{
    /// <summary>Copies it to where the audit is made again.</summary>
    /// <param name="folder">That folder in the scratch folder, opened by a run already: an empty folder takes no foreign files.</param>
    public void CopyTo(string folder)
    {
        foreach (StoredRecording recording in run.Audit.Recordings)
        {
            string from = Path.Combine(run.Audit.Folder, AuditWriter.Place(recording.Id, SilenceFiles.Json));
            if (File.Exists(from) && new FileInfo(from).LinkTarget is null)
            {
                scratch.Copy(from, Path.Combine(folder, AuditWriter.Place(recording.Id, SilenceFiles.Json)));
            }
        }
    }
}
