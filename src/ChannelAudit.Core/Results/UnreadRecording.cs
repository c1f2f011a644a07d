namespace ChannelAudit.Results;

/// <summary>A recording that could not be read.</summary>
/// <param name="Path">Path relative to the given root.</param>
/// <param name="Message">What was found.</param>
/// <param name="Hint">What to do.</param>
public sealed record UnreadRecording(string Path, string Message, string Hint);
