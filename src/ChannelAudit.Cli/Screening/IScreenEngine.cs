using ChannelAudit.Results;
using ChannelAudit.Runs;

namespace ChannelAudit.Cli.Screening;

/// <summary>Does the work of <c>screen</c>; the runner decides what is worked on and how the run ends.</summary>
internal interface IScreenEngine
{
    /// <summary>Audits one recording.</summary>
    /// <exception cref="ChannelAuditException">
    /// Of kind <see cref="FaultKind.Recording"/> when it cannot be read: the others are still audited. Of kind
    /// <see cref="FaultKind.Usage"/> when the setup or the events do not fit it: nothing is written.
    /// </exception>
    RecordingResult Audit(RecordingEntry recording, ScreenInputs inputs, CancellationToken cancel);

    /// <summary>Writes tables, pages and pictures.</summary>
    /// <exception cref="ChannelAuditException">When the folder cannot be written.</exception>
    void Write(AuditRun run, string folder, FigureChoice figures, CancellationToken cancel);

    /// <summary>Prints what a person reads first.</summary>
    void Print(AuditRun run, string folder, TextWriter output);
}
