namespace ChannelAudit.Reports.Stored;

/// <summary>A recording as <c>audit.json</c> lists it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Path">Its path below the given root, with <c>/</c>.</param>
/// <param name="Sha256">SHA-256 of its bytes in lower-case hexadecimal.</param>
/// <param name="Participant">The participant, or null.</param>
public sealed record StoredRecording(string Id, string Path, string Sha256, string? Participant = null);
