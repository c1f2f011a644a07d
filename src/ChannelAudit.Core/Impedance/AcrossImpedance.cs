using System.Collections.Immutable;

namespace ChannelAudit.Impedance;

/// <summary>The readings between an electrode of one site and one of another.</summary>
/// <param name="Readings">All of them in order of time, one and more.</param>
/// <param name="ExpectedKohm">The sum of the two contacts as solved at their sites, in kΩ: with nothing between them; null when not solved.</param>
public sealed record AcrossImpedance(ImmutableArray<LoggedReading> Readings, double? ExpectedKohm)
{
    /// <summary>The latest one.</summary>
    public LoggedReading Reading => Readings[^1];

    /// <summary>Whether something joins the two sites: far less than the two contacts, or, where these are not known, too low for two contacts.</summary>
    public bool SaysJoined => ExpectedKohm is { } expected
        ? Reading.Kohm < ImpedanceLimits.AcrossShare * expected
        : Reading.Kohm <= ImpedanceLimits.TooLowKohm;
}
