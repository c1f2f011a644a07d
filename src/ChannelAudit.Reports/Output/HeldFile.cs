namespace ChannelAudit.Reports.Output;

/// <summary>A file of a recording that belongs to the run.</summary>
/// <param name="File">Its name in the recording's folder, and its hash.</param>
/// <param name="WaitsAt">Where it waits for the end of the run; null when it stands in its place.</param>
internal sealed record HeldFile(OutputFile File, string? WaitsAt);
