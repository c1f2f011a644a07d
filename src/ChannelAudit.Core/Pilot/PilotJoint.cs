using ChannelAudit.Verdicts;

namespace ChannelAudit.Pilot;

/// <summary>Two sites that gel joins, or may join.</summary>
/// <param name="One">The first of them, in file order.</param>
/// <param name="Other">The second.</param>
/// <param name="Grade">Questionable: suspected, since the two channels alone cannot prove it; reject: found.</param>
/// <param name="GainOneToOther">What of the first site's contraction shows in the second, as a share; null when not known.</param>
/// <param name="GainOtherToOne">The other way round; through gel both are alike, through tissue they need not be.</param>
/// <param name="Taps">What taps on the lead wires say; null when there were none.</param>
public sealed record PilotJoint(string One, string Other, Grade Grade, double? GainOneToOther, double? GainOtherToOne, TapVerdict? Taps = null)
{
    /// <summary>Whether it is joined as far as anybody can know: found in the signal, or by the taps.</summary>
    public bool IsCertain => Taps == TapVerdict.Joined || (Grade == Grade.Reject && Taps != TapVerdict.Apart);

    /// <summary>Whether the taps say that nothing joins the two: what they share comes through tissue.</summary>
    public bool IsSettledApart => Taps == TapVerdict.Apart && Grade != Grade.Reject;

    /// <summary>Whether a site is one of the two.</summary>
    public bool Has(string site) => string.Equals(One, site, StringComparison.Ordinal) || string.Equals(Other, site, StringComparison.Ordinal);
}
