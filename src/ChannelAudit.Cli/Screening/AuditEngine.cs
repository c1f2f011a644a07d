using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Shares;
using ChannelAudit.Results;
using ChannelAudit.Runs;

namespace ChannelAudit.Cli.Screening;

/// <summary>The engine of the product: audits with the core, writes and prints with the reports.</summary>
/// <param name="style">What the terminal can show.</param>
internal sealed class AuditEngine(TerminalStyle style) : IScreenEngine
{
    /// <inheritdoc/>
    public RecordingResult Audit(RecordingEntry recording, ScreenInputs inputs, string sha256, CancellationToken cancel) =>
        RecordingAudit.Of(recording, inputs.Setup, inputs.Criteria, inputs.EventsFile, cancel, inputs.WithViews, inputs.Impedance, sha256, inputs.Threads);

    /// <inheritdoc/>
    public IScreenOutput Open(AuditRun run, string folder, FigureChoice figures, bool isAlone, SharePlan? share = null, bool withParquet = false) =>
        share is null ? new AuditOutput(run, folder, figures, isAlone, style, withParquet: withParquet) : new ShareOutput(run, folder, figures, share);
}
