namespace ChannelAudit.Pilot;

/// <summary>Two sites and what of the taps on one shows in the other.</summary>
/// <param name="One">The first site.</param>
/// <param name="Other">The second site.</param>
/// <param name="OneToOther">The largest share of a tap on the first that shows in the second with the same shape; null when the first was not tapped.</param>
/// <param name="OtherToOne">The same the other way round.</param>
/// <param name="Verdict">What follows.</param>
public sealed record TappedPair(string One, string Other, double? OneToOther, double? OtherToOne, TapVerdict Verdict);
