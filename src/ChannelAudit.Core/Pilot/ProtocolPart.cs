namespace ChannelAudit.Pilot;

/// <summary>A part of the protocol.</summary>
/// <param name="Kind">What happens.</param>
/// <param name="Site">The site, or null for rest.</param>
/// <param name="Label">How the event is marked in the recording.</param>
/// <param name="AtS">When it begins, in seconds.</param>
/// <param name="ForS">How long it lasts, in seconds.</param>
/// <param name="LeadS">How long before it nothing is asked for, so that it can be shown and announced, in seconds.</param>
public sealed record ProtocolPart(ProtocolPartKind Kind, string? Site, string Label, int AtS, int ForS, int LeadS = 0);
