namespace ChannelAudit.Impedance;

/// <summary>The latest reading between an electrode of one site and one of another.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="ExpectedKohm">The sum of the two contacts as solved at their sites, in kΩ: what it would be with nothing between them; null when not solved.</param>
public sealed record AcrossImpedance(LoggedReading Reading, double? ExpectedKohm)
{
    /// <summary>Whether something joins the two sites: far less than the two contacts, or, where these are not known, too low for two contacts.</summary>
    public bool SaysJoined => ExpectedKohm is { } expected
        ? Reading.Kohm < ImpedanceLimits.AcrossShare * expected
        : Reading.Kohm <= ImpedanceLimits.TooLowKohm;
}
