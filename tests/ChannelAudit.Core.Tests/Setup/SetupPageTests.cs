using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Setup;
using ChannelAudit.TestKit;
using ChannelAudit.Toml;
using Xunit;

namespace ChannelAudit.Core.Tests.Setup;

public sealed class SetupPageTests
{
    [Fact]
    public void EveryKeyHasItsLineOnThePage()
    {
        AreOnThePage("recording", SetupKeys.Recording);
        AreOnThePage("sites", SetupKeys.Sites);
        AreOnThePage("recordings", SetupKeys.Overrides);
        AreOnThePage("participants", SetupKeys.Participants);
        AreOnThePage("trials", SetupKeys.Trials);
        AreOnThePage("scoring", SetupKeys.Scoring);
        AreOnThePage("protocol", SetupKeys.Protocol);
        AreOnThePage("trend", SetupKeys.Trend);
    }

    [Fact]
    public void TheExampleOfThePageIsInOrder()
    {
        StudySetup setup = SetupFile.Parse(Assert.Single(DocumentPart.Blocks("setup.md", "toml")), "setup.toml");

        Assert.Equal("cheek, eye, brow", string.Join(", ", setup.Sites.Select(site => site.Name)));
    }

    [Fact]
    public void EveryExampleInAMessageIsInOrder()
    {
        const string site = "[[sites]]\nname = \"x\"\nchannel = \"y\"\n[[sites]]\nname = \"eye\"\nchannel = \"z\"\n";
        foreach ((string table, ImmutableArray<TomlKey> keys) in new[]
        {
            ("[recording]\n", SetupKeys.Recording), ("[trials]\n", SetupKeys.Trials), ("[scoring]\n", SetupKeys.Scoring), ("[protocol]\n", SetupKeys.Protocol), ("[trend]\n", SetupKeys.Trend), (site, SetupKeys.Sites),
            ("[participants]\n", SetupKeys.Participants), ("[[sites]]\nname = \"cheek\"\nchannel = \"EMG 1\"\n[[recordings]]\nmatch = \"*\"\n", [.. SetupKeys.Overrides.Where(key => key.Name is not "match")]),
        })
        {
            foreach (TomlKey key in keys.Where(key => key.Name is not ("name" or "channel")))
            {
                // In the site's table the example goes to the first site, which may be adjacent to the second.
                string toml = string.Equals(table, site, StringComparison.Ordinal) ? site.Replace("channel = \"y\"\n", $"channel = \"y\"\n{key.Example}\n", StringComparison.Ordinal) : table + key.Example;
                string more = key.Name.StartsWith("trigger_", StringComparison.Ordinal) ? "\nfrom = \"trigger\"" : string.Empty;
                SetupFile.Parse(toml + more, "setup.toml");
            }
        }
    }

    private static void AreOnThePage(string name, ImmutableArray<TomlKey> keys)
    {
        string[] rows = [.. keys.Select(key => $"| `{key.Name}` | `{key.Example}` | {key.Meaning} |{Range(key)} |")];

        Assert.Equal(["| key | for example | meaning | range |", "|---|---|---|---|", .. rows], DocumentPart.Between("setup.md", name));
    }

    private static string Range(TomlKey key) => double.IsInfinity(key.Least)
        ? string.Empty
        : string.Create(CultureInfo.InvariantCulture, $" {key.Least} to {key.Most}");
}
