using ChannelAudit.Reports.Shares;
using ChannelAudit.Results;
using ChannelAudit.Runs;

namespace ChannelAudit.Cli.Screening;

/// <summary>Does the work of <c>screen</c>; the runner decides what is worked on and how the run ends.</summary>
internal interface IScreenEngine
{
    /// <summary>Audits one recording. Called on several threads.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="inputs">What it is audited with.</param>
    /// <param name="sha256">The hash of its bytes.</param>
    /// <param name="cancel">Ends it.</param>
    /// <exception cref="ChannelAuditException">
    /// Of kind <see cref="FaultKind.Recording"/> when it cannot be read: the others are still audited. Of kind
    /// <see cref="FaultKind.Usage"/> when the setup or the events do not fit it: nothing is written.
    /// </exception>
    RecordingResult Audit(RecordingEntry recording, ScreenInputs inputs, string sha256, CancellationToken cancel);

    /// <summary>Opens the place of results.</summary>
    /// <param name="run">With what recordings are audited.</param>
    /// <param name="folder">The folder as the user gave it.</param>
    /// <param name="figures">Pictures to draw.</param>
    /// <param name="isAlone">Whether the run is over one recording.</param>
    /// <param name="share">What it is a share of; null for a whole run.</param>
    /// <param name="withParquet">Whether tables of a whole run are written as Parquet files too.</param>
    /// <exception cref="ChannelAuditException">When the folder is not ours, or cannot be written.</exception>
    IScreenOutput Open(AuditRun run, string folder, FigureChoice figures, bool isAlone, SharePlan? share = null, bool withParquet = false);
}
