namespace ChannelAudit.Reports.Output;

/// <summary>A file that a command writes beside those of every audit.</summary>
/// <param name="Path">Path below the output folder, with <c>/</c>.</param>
/// <param name="Bytes">The whole content.</param>
/// <param name="OutlivesAudits">Whether it is left out of the list in <c>audit.json</c>, so that a later audit of the folder does not clear it away.</param>
public sealed record ExtraFile(string Path, ReadOnlyMemory<byte> Bytes, bool OutlivesAudits = false);
