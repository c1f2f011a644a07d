using System.Collections.Immutable;

namespace ChannelAudit.Impedance;

/// <summary>Which contacts of a site to make again, so that none of its readings stays above <see cref="ImpedanceLimits.RedoAboveKohm"/>.</summary>
/// <remarks>
/// As few as it takes, the highest first: a contact that is made again counts as half a good reading. An electrode that is about as high as the last one
/// named is named with it; the ground, which all sites share, only where it must be.
/// </remarks>
public static class HighContacts
{
    private const double MadeAgainKohm = ImpedanceLimits.GoodBelowKohm / 2;

    /// <summary>The contacts, the highest first; empty when they are not solved or no reading is too high.</summary>
    /// <param name="site">The readings of a site.</param>
    public static ImmutableArray<(string Name, double Kohm)> Of(SiteImpedance site)
    {
        ArgumentNullException.ThrowIfNull(site);
        if (site.Solved is not { } solved)
        {
            return [];
        }

        (string Name, double Kohm, bool IsGround)[] contacts =
        [
            .. new[]
            {
                (Name: $"electrode {site.NameOfA}", Kohm: solved.AKohm, IsGround: false),
                (Name: $"electrode {site.NameOfB}", Kohm: solved.BKohm, IsGround: false),
                (Name: "the ground", Kohm: solved.GroundKohm, IsGround: true),
            }.OrderByDescending(contact => contact.Kohm),
        ];
        int named = 0;
        while (named < contacts.Length && HighestReading(contacts, named) > ImpedanceLimits.RedoAboveKohm)
        {
            named++;
        }

        return
        [
            .. contacts
                .Where((contact, i) => i < named
                    || (named > 0 && !contact.IsGround && contact.Kohm >= (1 - ImpedanceLimits.Tolerance) * contacts[named - 1].Kohm))
                .Select(contact => (contact.Name, contact.Kohm)),
        ];
    }

    // A reading is the sum of two contacts.
    private static double HighestReading((string Name, double Kohm, bool IsGround)[] contacts, int named) => contacts
        .Select((contact, i) => i < named ? Math.Min(contact.Kohm, MadeAgainKohm) : contact.Kohm)
        .OrderDescending()
        .Take(2)
        .Sum();
}
