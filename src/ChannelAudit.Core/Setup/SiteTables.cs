using System.Collections.Immutable;
using ChannelAudit.Toml;

namespace ChannelAudit.Setup;

/// <summary>The <c>[[sites]]</c> tables.</summary>
internal static class SiteTables
{
    private static readonly ImmutableArray<string> Sides = ["left", "right"];

    /// <summary>Reads all of them and holds them against one another.</summary>
    public static ImmutableArray<SiteSetup> Read(TomlNode? list, string fileName)
    {
        if (list is null)
        {
            return [];
        }

        if (list.Kind != TomlKind.List || list.Items.Any(item => item.Kind != TomlKind.Table))
        {
            throw SetupErrors.SitesNotAList(fileName, list.Line);
        }

        ImmutableArray<TomlSection> sections =
            [.. list.Items.Select(item => new TomlSection(item, "[[sites]]", fileName, SetupKeys.Sites))];
        ImmutableArray<SiteSetup> sites = [.. sections.Select(ReadOne)];
        for (int i = 0; i < sites.Length; i++)
        {
            RefuseRepeats(sites, sections, i);
            RefuseWrongNeighbours(sites, sections[i], sites[i]);
        }

        return sites;
    }

    /// <summary>The ids of a site's electrodes, when they are two different ones.</summary>
    internal static ImmutableArray<string> TwoElectrodes(TomlSection section, ImmutableArray<string> electrodes)
    {
        if (electrodes.Length != 2)
        {
            throw SetupErrors.NotTwoElectrodes(section, electrodes.Length);
        }

        return string.Equals(electrodes[0], electrodes[1], StringComparison.Ordinal) ? throw SetupErrors.SameElectrode(section, electrodes[0]) : electrodes;
    }

    private static SiteSetup ReadOne(TomlSection section)
    {
        ImmutableArray<string> electrodes = section.Find("electrodes") is null ? [] : TwoElectrodes(section, section.Texts("electrodes"));
        ImmutableArray<double> position = section.Numbers("position");
        if (section.Find("position") is not null && position.Length != 2)
        {
            throw SetupErrors.NotTwoCoordinates(section, position.Length);
        }

        if (string.Equals(section.Text("name"), SiteSetup.Ground, StringComparison.OrdinalIgnoreCase))
        {
            throw SetupErrors.GroundIsNoSite(section);
        }

        string? side = section.Text("side");
        return new SiteSetup
        {
            Name = section.Text("name") ?? throw SetupErrors.SiteWithout(section, "name", "name = \"cheek\""),
            Channel = section.Text("channel") ?? throw SetupErrors.SiteWithout(section, "channel", "channel = \"LABEL IN THE RECORDING\""),
            Muscle = section.Text("muscle"),
            Side = side is null || Sides.Contains(side, StringComparer.Ordinal) ? side : throw SetupErrors.NotAmong(section, "side", side, Sides),
            Position = position,
            Electrodes = electrodes,
            Adjacent = [.. section.Texts("adjacent").Distinct(StringComparer.Ordinal)],
            Task = section.Text("task"),
        };
    }

    private static void RefuseRepeats(ImmutableArray<SiteSetup> sites, ImmutableArray<TomlSection> sections, int index)
    {
        for (int earlier = 0; earlier < index; earlier++)
        {
            // Names that differ by case only would still be taken for one another in a table.
            if (string.Equals(sites[earlier].Name, sites[index].Name, StringComparison.OrdinalIgnoreCase))
            {
                throw SetupErrors.SiteTwice(sections[index], sites[index].Name, sections[earlier].Line);
            }

            if (string.Equals(sites[earlier].Channel, sites[index].Channel, StringComparison.Ordinal))
            {
                throw SetupErrors.ChannelTwice(sections[index], sites[index].Channel, sections[earlier].LineOf("channel"));
            }
        }
    }

    private static void RefuseWrongNeighbours(ImmutableArray<SiteSetup> sites, TomlSection section, SiteSetup site)
    {
        foreach (string neighbour in site.Adjacent)
        {
            if (string.Equals(neighbour, site.Name, StringComparison.Ordinal))
            {
                throw SetupErrors.AdjacentToItself(section, site.Name);
            }

            if (!string.Equals(neighbour, SiteSetup.Ground, StringComparison.Ordinal) && !sites.Any(other => string.Equals(other.Name, neighbour, StringComparison.Ordinal)))
            {
                throw SetupErrors.UnknownAdjacent(section, neighbour, [.. sites.Select(other => other.Name)]);
            }
        }
    }
}
