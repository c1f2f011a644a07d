using System.Text.RegularExpressions;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Documents;

/// <summary>
/// The page for the first half hour, followed to the letter in bash: its commands run, they print what stands below them, and its files are there.
/// </summary>
public sealed partial class GettingStartedTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly string _page = File.ReadAllText(Path.GetFullPath(RepositoryRoot.Fixture("../docs/guides/getting-started.md")));

    public void Dispose() => _folder.Dispose();

    [SkippableFact]
    public void EveryCommandWorksAndPrintsWhatStandsBelowIt()
    {
        int commands = GuidePage.Follow(_page, _folder);

        Assert.Equal(8, commands);
        FilesThatThePageNamesAreThere();
        TheReportHasTheHeadingsThatThePageNames();
    }

    private void FilesThatThePageNamesAreThere()
    {
        string[] named = [.. PathInText().Matches(_page).Select(match => match.Groups["path"].Value).Distinct(StringComparer.Ordinal)];

        Assert.True(named.Length >= 5, string.Join(' ', named));
        Assert.All(named, name => Assert.True(File.Exists(_folder.In(name)), name));
    }

    private void TheReportHasTheHeadingsThatThePageNames()
    {
        string report = File.ReadAllText(_folder.In("second-look/report.html"));
        string section = _page[_page.IndexOf("## 6. ", StringComparison.Ordinal).._page.IndexOf("## 7. ", StringComparison.Ordinal)];
        int[] places =
        [
            .. Bold().Matches(section)
                .Select(match => Regex.Match(report, $"<h[1-6][^>]*>{match.Groups["text"].Value}", RegexOptions.None, TimeSpan.FromSeconds(5)).Index),
        ];

        Assert.Equal(5, places.Length);
        Assert.All(places, place => Assert.True(place > 0));
        Assert.Equal(places.Order(), places);
        Assert.Equal(
            "first\tn/a\tcheek\tharbour\t8\t4\t0\t4\t4\t6\tfalse\tn/a",
            File.ReadLines(_folder.In("second-look/conditions.tsv")).First(line => line.Contains("harbour", StringComparison.Ordinal)));
    }

    [GeneratedRegex(
        "`(?<path>(my-demo|first-look|second-look|nightly)/[^` ]+[.][a-z]+)`",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex PathInText();

    [GeneratedRegex(@"\*\*(?<text>[^*]+)\*\*", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Bold();
}
