namespace ChannelAudit.Reports.Output;

/// <summary>A file of an audit.</summary>
/// <param name="Path">Path relative to the audit's folder, with <c>/</c>.</param>
/// <param name="Sha256">SHA-256 of its bytes in lower-case hexadecimal.</param>
public sealed record OutputFile(string Path, string Sha256);
