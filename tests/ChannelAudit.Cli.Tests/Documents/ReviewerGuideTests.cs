using System.Text.RegularExpressions;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Documents;

/// <summary>The reviewer's walk through the audit of the demo: every command does what the page shows, and its files and headings are there.</summary>
public sealed partial class ReviewerGuideTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly string _page = File.ReadAllText(Path.GetFullPath(RepositoryRoot.Fixture("../docs/guides/reviewer.md")));

    public void Dispose() => _folder.Dispose();

    [SkippableFact]
    public void EveryCommandWorksAndPrintsWhatStandsBelowIt()
    {
        int commands = GuidePage.Follow(_page, _folder);

        Assert.Equal(9, commands);
        string[] named = [.. PathInText().Matches(_page).Select(match => match.Groups["path"].Value).Distinct(StringComparer.Ordinal)];
        Assert.True(named.Length >= 5, string.Join(' ', named));
        Assert.All(named, name => Assert.True(File.Exists(_folder.In(name)), name));
        string report = File.ReadAllText(_folder.In("review/report.html"));
        Assert.Contains(">Are exclusions even?</h2>", report, StringComparison.Ordinal);
        Assert.Contains(">What hangs on the limits</h2>", report, StringComparison.Ordinal);
    }

    [GeneratedRegex(
        "`(?<path>(review/[^` ]+|answers|preregistration|evidence)[.][a-z]+)`",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex PathInText();
}
