namespace ChannelAudit.Views;

/// <summary>Where exactly samples are at fault.</summary>
/// <param name="Reason">The reason code.</param>
/// <param name="FromS">Start in seconds from the first stored sample.</param>
/// <param name="ToS">End.</param>
public sealed record FaultMark(string Reason, double FromS, double ToS);
