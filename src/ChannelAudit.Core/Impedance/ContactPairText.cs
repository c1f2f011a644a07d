using System.Collections.Immutable;
using ChannelAudit.Setup;

namespace ChannelAudit.Impedance;

/// <summary>Reads what stands in the column <c>pair</c>: <c>a-b</c>, <c>a-ground</c>, <c>cheek.b-eye.a</c>, or ids of the setup.</summary>
/// <remarks>Names may hold dashes and dots themselves, so every dash is tried as the one between two ends, and within an end the last dot counts.</remarks>
/// <param name="siteNames">Sites that there are.</param>
/// <param name="setup">For the ids of electrodes.</param>
internal sealed class ContactPairText(ImmutableArray<string> siteNames, StudySetup setup)
{
    // Two names and two ids. Each dash is tried with all that stands on either side, which grows with the square of the length.
    private const int Longest = 400;

    /// <summary>Reads a pair.</summary>
    /// <param name="text">The cell.</param>
    /// <param name="site">The site of the row: it is meant where an end names none.</param>
    /// <returns>Both ends, first electrode before second before ground, across sites in order of their names; null when it is no pair.</returns>
    public (SiteElectrode From, SiteElectrode To)? Read(string text, string site)
    {
        foreach ((string left, string right) in Halves(text))
        {
            if (End(left, site) is { } from && End(right, site) is { } to)
            {
                return IsBefore(to, from) ? (to, from) : (from, to);
            }
        }

        return null;
    }

    /// <summary>A site that the text names and that there is none of, or null.</summary>
    /// <param name="text">A cell that is no pair.</param>
    public string? UnknownSite(string text)
    {
        foreach ((string left, string right) in Halves(text))
        {
            foreach (string end in new[] { left, right })
            {
                int dot = end.LastIndexOf('.');
                if (dot > 0 && end[(dot + 1)..].Trim() is "a" or "b" or "A" or "B" && !siteNames.Contains(end[..dot].Trim(), StringComparer.Ordinal))
                {
                    return end[..dot].Trim();
                }
            }
        }

        return null;
    }

    private static IEnumerable<(string Left, string Right)> Halves(string text)
    {
        for (int dash = text.Length > Longest ? -1 : text.IndexOf('-', StringComparison.Ordinal); dash >= 0; dash = text.IndexOf('-', dash + 1))
        {
            yield return (text[..dash].Trim(), text[(dash + 1)..].Trim());
        }
    }

    private SiteElectrode? End(string text, string site)
    {
        if (text.Equals(SiteSetup.Ground, StringComparison.OrdinalIgnoreCase))
        {
            return SiteElectrode.Ground;
        }

        int dot = text.LastIndexOf('.');
        if (Electrode(text, site) is { } own)
        {
            return own;
        }

        return dot > 0 && siteNames.Contains(text[..dot].Trim(), StringComparer.Ordinal)
            ? Electrode(text[(dot + 1)..].Trim(), text[..dot].Trim())
            : setup.Sites.Select(other => Id(text, other)).FirstOrDefault(found => found is not null);
    }

    private SiteElectrode? Electrode(string text, string site) => text switch
    {
        "a" or "A" => new SiteElectrode(site, IsSecond: false),
        "b" or "B" => new SiteElectrode(site, IsSecond: true),
        _ => setup.Sites.FirstOrDefault(known => string.Equals(known.Name, site, StringComparison.Ordinal)) is { } found ? Id(text, found) : null,
    };

    private static SiteElectrode? Id(string text, SiteSetup site) =>
        site.Electrodes.IndexOf(text) is var index && index < 0 ? null : new SiteElectrode(site.Name, index == 1);

    private static bool IsBefore(SiteElectrode one, SiteElectrode other) =>
        !one.IsGround
        && (other.IsGround
            || (string.CompareOrdinal(one.Site, other.Site) is var order && order < 0)
            || (order == 0 && !one.IsSecond && other.IsSecond));
}
