namespace ChannelAudit.Results;

/// <summary>A channel that is listed but not audited.</summary>
/// <param name="Label">Its label.</param>
/// <param name="Cause">Why not.</param>
public sealed record SkippedChannel(string Label, string Cause);
