namespace ChannelAudit.Impedance;

/// <summary>What each contact of a site takes part with in its three readings, by the star model.</summary>
/// <param name="AKohm">Electrode a, in kΩ.</param>
/// <param name="BKohm">Electrode b, in kΩ.</param>
/// <param name="GroundKohm">Ground, in kΩ; every site has the same ground, so all sites should give about the same.</param>
/// <remarks>
/// Readings of free contacts are sums, ab = a + b, a-ground = a + g, b-ground = b + g (Kirchhoff's laws, the body taken as one
/// node), and three sums give their three terms. Two cautions. Meters give magnitudes, which add up only approximately when phases
/// differ. And gel that joins two contacts is not part of a star: the solved values are then no contact's own, and what gives
/// the gel away is that they do not fit together.
/// </remarks>
public readonly record struct SolvedImpedance(double AKohm, double BKohm, double GroundKohm)
{
    /// <summary>Solves the three readings of a site.</summary>
    /// <param name="readings">The readings, each finite and 0 or more.</param>
    /// <returns>The three contacts in kΩ. A negative value is no error of the arithmetic: no star gives such readings.</returns>
    /// <exception cref="ArgumentException">A reading is negative or not finite.</exception>
    public static SolvedImpedance Of(ImpedanceTriple readings)
    {
        (double ab, double ag, double bg) = readings;
        if (!IsReading(ab) || !IsReading(ag) || !IsReading(bg))
        {
            throw new ArgumentException("Readings are finite and not negative.", nameof(readings));
        }

        return new SolvedImpedance((ab + ag - bg) / 2, (ab + bg - ag) / 2, (ag + bg - ab) / 2);
    }

    private static bool IsReading(double kohm) => double.IsFinite(kohm) && kohm >= 0;
}
