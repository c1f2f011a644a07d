using System.Collections.Immutable;
using ChannelAudit.Toml;

namespace ChannelAudit.Setup;

/// <summary>The <c>[[recordings]]</c> tables.</summary>
internal static class OverrideTables
{
    /// <summary>Reads all of them and holds them against the sites.</summary>
    public static ImmutableArray<RecordingOverride> Read(TomlNode? list, ImmutableArray<SiteSetup> sites, string fileName)
    {
        if (list is null)
        {
            return [];
        }

        if (list.Kind != TomlKind.List || list.Items.Any(item => item.Kind != TomlKind.Table))
        {
            throw SetupErrors.OverridesNotAList(fileName, list.Line);
        }

        return [.. list.Items.Select(item => ReadOne(new TomlSection(item, "[[recordings]]", fileName, SetupKeys.Overrides), sites))];
    }

    private static RecordingOverride ReadOne(TomlSection section, ImmutableArray<SiteSetup> sites)
    {
        ImmutableArray<string> match = section.Find("match") is { Kind: TomlKind.Text } ? [section.Text("match")!] : section.Texts("match");
        if (match.IsEmpty)
        {
            throw SetupErrors.OverrideWithoutMatch(section);
        }

        return new RecordingOverride
        {
            Match = [.. match.Select(text => PathPattern.Of(text, [], out string? unknown) ?? throw SetupErrors.UnknownInBraces(section, "match", unknown!, []))],
            Participant = section.Text("participant"),
            Group = section.Text("group"),
            Channels = Channels(section, sites),
            Electrodes = Electrodes(section, sites),
            Recording = RecordingTable.Read(section),
        };
    }

    private static ImmutableDictionary<string, string> Channels(TomlSection section, ImmutableArray<SiteSetup> sites)
    {
        ImmutableDictionary<string, string> channels = section.TextsByName("channels");
        RequireSites(section, "channels", channels.Keys.Order(StringComparer.Ordinal), sites);

        // Exchanged leads are two entries; two sites on one channel are a mistake.
        string[] all = [.. sites.Select(site => channels.GetValueOrDefault(site.Name, site.Channel))];
        return all.GroupBy(channel => channel, StringComparer.Ordinal).FirstOrDefault(group => group.Count() > 1) is { } twice
            ? throw SetupErrors.ChannelTwiceHere(section, twice.Key)
            : channels;
    }

    private static ImmutableDictionary<string, ImmutableArray<string>> Electrodes(TomlSection section, ImmutableArray<SiteSetup> sites)
    {
        (string Name, TomlNode Value)[] entries = [.. section.Entries("electrodes")];
        RequireSites(section, "electrodes", entries.Select(entry => entry.Name), sites);
        return entries.ToImmutableDictionary(entry => entry.Name, entry => SiteTables.TwoElectrodes(section, section.TextsIn("electrodes", entry.Value)), StringComparer.Ordinal);
    }

    private static void RequireSites(TomlSection section, string key, IEnumerable<string> named, ImmutableArray<SiteSetup> sites)
    {
        foreach (string site in named)
        {
            if (!sites.Any(one => string.Equals(one.Name, site, StringComparison.Ordinal)))
            {
                throw SetupErrors.NotAmong(section, key, site, [.. sites.Select(one => one.Name)]);
            }
        }
    }
}
