namespace ChannelAudit.Reports.Bundles;

/// <summary>A file inside a bundle.</summary>
/// <param name="Path">Its path, with <c>/</c>.</param>
/// <param name="Sha256">SHA-256 of its bytes in lower-case hexadecimal.</param>
/// <param name="Bytes">How many there are.</param>
public sealed record BundleEntry(string Path, string Sha256, long Bytes);
