namespace ChannelAudit.Reports.Stored;

/// <summary>A file that an audit was made with: a setup or impedance readings.</summary>
/// <param name="FileName">Its name without its folder, or null when there was none.</param>
/// <param name="Sha256">SHA-256 of its bytes in lower-case hexadecimal, or null when there was none.</param>
public sealed record StoredInput(string? FileName, string? Sha256);
