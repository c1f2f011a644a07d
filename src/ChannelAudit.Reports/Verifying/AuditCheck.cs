namespace ChannelAudit.Reports.Verifying;

/// <summary>One question that <c>verify</c> asks, with its answer.</summary>
/// <param name="Name">What was looked at.</param>
/// <param name="State">What came of it.</param>
/// <param name="Text">How much of it there is, what differs, or why nobody looked.</param>
public sealed record AuditCheck(string Name, CheckState State, string Text);
