namespace ChannelAudit.Synthesis;

/// <summary>One reading of an impedance meter.</summary>
/// <param name="Site">The site; of a reading across two sites the first.</param>
/// <param name="Pair"><c>a-b</c>, <c>a-ground</c> or <c>b-ground</c>, where a is the site's first electrode; across sites <c>cheek.a-eye.a</c>.</param>
/// <param name="Kohm">What the meter shows, in kΩ.</param>
public sealed record ImpedanceReading(string Site, string Pair, double Kohm);
