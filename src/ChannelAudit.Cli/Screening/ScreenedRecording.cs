using ChannelAudit.Reports.Digests;
using ChannelAudit.Results;
using ChannelAudit.Runs;

namespace ChannelAudit.Cli.Screening;

/// <summary>What came of one recording: a result, or why it could not be read.</summary>
/// <param name="Entry">The recording.</param>
/// <param name="Stamp">From what the result was made; null without one.</param>
/// <param name="Result">The result, without what only its pictures need; null when it could not be read.</param>
/// <param name="WasTakenOver">Whether an earlier run had made it.</param>
/// <param name="Fault">Why it could not be read, or null.</param>
internal sealed record ScreenedRecording(RecordingEntry Entry, RecordingStamp? Stamp, RecordingResult? Result, bool WasTakenOver = false, ChannelAuditException? Fault = null);
