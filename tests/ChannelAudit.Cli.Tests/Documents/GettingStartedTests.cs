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
        string? output = null;
        int commands = 0;
        foreach (Match block in Block().Matches(_page))
        {
            string text = block.Groups["text"].Value;
            switch (block.Groups["language"].Value)
            {
                case "toml":
                    _folder.Write("setup.toml", text);
                    break;
                case "sh":
                    CommandRun run = Bash.Run("exec 2>&1\n" + text, _folder.Folder);
                    Assert.True(run.Code == ExitCode.Done, $"{text}\n{run.Output}");
                    Assert.True(!run.Output.Contains("error:", StringComparison.Ordinal) || text.Contains("||", StringComparison.Ordinal), run.Output);
                    output = run.Output;
                    commands++;
                    break;

                // What stands above the first command is for the shell of the reader: building, and the path.
                default:
                    HasInOrder(output, text);
                    break;
            }
        }

        Assert.Equal(8, commands);
        FilesThatThePageNamesAreThere();
        TheReportHasTheHeadingsThatThePageNames();
    }

    private static void HasInOrder(string? output, string shown)
    {
        int from = 0;
        foreach (string part in shown.Split("...\n", StringSplitOptions.RemoveEmptyEntries).Where(_ => output is not null))
        {
            int at = output!.IndexOf(part, from, StringComparison.Ordinal);
            Assert.True(at >= 0, $"not printed:\n{part}\nbut:\n{output}");
            from = at + part.Length;
        }
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
        "^```(?<language>sh|toml|text)\n(?<text>.*?)^```$",
        RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Block();

    [GeneratedRegex(
        "`(?<path>(my-demo|first-look|second-look|nightly)/[^` ]+[.][a-z]+)`",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex PathInText();

    [GeneratedRegex(@"\*\*(?<text>[^*]+)\*\*", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Bold();
}
