namespace ChannelAudit.Reports.Digests;

/// <summary>A reason of a channel, counted.</summary>
/// <param name="Reason">The reason code.</param>
/// <param name="Trials">The channel's trials that carry it; 0 when only the channel as a whole does.</param>
/// <param name="Note">A few words that add to its name: <c>suspected</c>, <c>rectified</c>; null for none.</param>
public sealed record ReasonTrials(string Reason, int Trials, string? Note = null);
