using System.Collections.Concurrent;
using ChannelAudit.Cli.Screening;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Shares;
using ChannelAudit.Results;
using ChannelAudit.Runs;

namespace ChannelAudit.Cli.Verifying;

/// <summary>Audits as <c>screen</c> does, and remembers what could not be read.</summary>
/// <param name="pictures">Pictures that take the place of drawn ones; null: they are drawn.</param>
/// <param name="studies">Studies of planted faults that the pages show.</param>
internal sealed class VerifyEngine(KeptPictures? pictures, KeptStudyFiles studies) : IScreenEngine
{
    private readonly ConcurrentDictionary<string, string> _unread = new(StringComparer.Ordinal);

    /// <summary>Paths of recordings that could not be read, with what was found.</summary>
    public IReadOnlyDictionary<string, string> Unread => _unread;

    /// <inheritdoc/>
    public RecordingResult Audit(RecordingEntry recording, ScreenInputs inputs, string sha256, CancellationToken cancel)
    {
        try
        {
            return RecordingAudit.Of(recording, inputs.Setup, inputs.Criteria, inputs.EventsFile, cancel, inputs.WithViews, inputs.Impedance, sha256);
        }
        catch (ChannelAuditException fault) when (fault.Kind == FaultKind.Recording)
        {
            _unread[recording.RelativePath] = fault.Message;
            throw;
        }
    }

    /// <inheritdoc/>
    public IScreenOutput Open(AuditRun run, string folder, FigureChoice figures, bool isAlone, SharePlan? share = null, bool withParquet = false)
    {
        AuditOutput output = new(run, folder, figures, isAlone, new TerminalStyle(), pictures is null ? null : pictures.Of, withParquet);
        studies.CopyTo(folder);
        return output;
    }
}
