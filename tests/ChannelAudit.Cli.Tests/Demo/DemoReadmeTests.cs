using System.Globalization;
using System.Text.RegularExpressions;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Demo;

/// <summary>The demo's README, followed to the letter: its commands run, they print what it says, and every file it names is there.</summary>
public sealed partial class DemoReadmeTests(DemoRun demo) : IClassFixture<DemoRun>
{
    [Fact]
    public async Task EveryCommandWorksAndPrintsWhatStandsBelowIt()
    {
        string output = string.Empty;
        int commands = 0;
        foreach ((string language, string[] lines) in demo.Blocks())
        {
            if (language is "sh")
            {
                output = string.Empty;
                foreach (string line in lines)
                {
                    CommandRun run = await demo.RunLine(line);

                    // The README says that the list and the verdicts differ, and that this is the code for it.
                    int expected = line.StartsWith("channelaudit reconcile ", StringComparison.Ordinal) ? ExitCode.Reached : ExitCode.Done;
                    Assert.True(run.Code == expected && run.Error.Length == 0, string.Create(CultureInfo.InvariantCulture, $"{line}: {run.Code}\n{run.Error}"));
                    output += run.Output;
                    commands++;
                }

                continue;
            }

            Assert.Equal("text", language);
            Assert.Contains(string.Join('\n', lines), output, StringComparison.Ordinal);
        }

        Assert.Equal(8, commands);
        FilesThatTheReadmeNamesAreThere();
        await AuditOfTheSameStudyHasTheSameBytes();
    }

    [Fact]
    public void TheDemoEndsWell()
    {
        Assert.Equal((ExitCode.Done, string.Empty), (demo.Made.Code, demo.Made.Error));
        Assert.Contains("18 channels in 6 recordings: 5 reject, 1 questionable, 12 pass.\n", demo.Made.Output, StringComparison.Ordinal);

        // The README says this number in a sentence.
        Assert.Contains("baseline drift 1190 µV/min, 29 of 29 trials\n", demo.Made.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void TheProjectsReadmeShowsWhatTheDemoPrints()
    {
        string readme = File.ReadAllText(Path.GetFullPath(RepositoryRoot.Fixture("../README.md")));

        // The last line has the folder's name in it.
        string printed = demo.Made.Output[..demo.Made.Output.IndexOf("Written to ", StringComparison.Ordinal)];

        Assert.Contains("```text\n" + printed + "Written to my-demo/audit: ", readme, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ASecondDemoHasTheSameBytes()
    {
        string second = demo.Folder + "-second";
        CommandRun run = await DemoRun.Run("demo", second);

        string[] made = ["README.md", "exclusions.tsv", "lab.toml", .. FilesBelow(second, "study"), .. FilesBelow(second, "impedance"), .. FilesBelow(second, "audit")];
        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Equal(FilesBelow(second, string.Empty), made.Order(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.Equal((13, 6), (FilesBelow(second, "study").Length, FilesBelow(second, "impedance").Length));
        Assert.All(made, file => Assert.Equal(File.ReadAllBytes(Path.Combine(demo.Folder, file)), File.ReadAllBytes(Path.Combine(second, file))));
    }

    [Fact]
    public async Task TheFolderOfAnEarlierDemoIsMadeAnewAndAnotherIsRefused()
    {
        string folder = demo.Folder + "-again";
        await DemoRun.Run("demo", folder);
        await File.WriteAllTextAsync(Path.Combine(folder, "lab.toml"), "changed");
        CommandRun again = await DemoRun.Run("demo", folder);
        CommandRun refused = await DemoRun.Run("demo", Path.Combine(folder, "study"));

        Assert.Equal(ExitCode.Done, again.Code);
        Assert.Contains("[drift]", await File.ReadAllTextAsync(Path.Combine(folder, "lab.toml")), StringComparison.Ordinal);
        Assert.Equal(ExitCode.Usage, refused.Code);
        Assert.Contains("not empty and not an earlier demo", refused.Error, StringComparison.Ordinal);
    }

    private void FilesThatTheReadmeNamesAreThere()
    {
        string text = File.ReadAllText(Path.Combine(demo.Folder, "README.md"));
        string[] named = [.. Code().Matches(text).Select(match => match.Groups["text"].Value).Where(word => word is not "n/a" && Place().IsMatch(word)).Distinct(StringComparer.Ordinal)];

        Assert.True(named.Length >= 12, string.Join(' ', named));
        Assert.All(named, name => Assert.True(Path.Exists(Path.Combine(demo.Folder, name)), name));
    }

    private async Task AuditOfTheSameStudyHasTheSameBytes()
    {
        Assert.Equal(ExitCode.Done, (await demo.RunLine("channelaudit screen study --setup study/setup.toml --out again")).Code);
        string[] files = FilesBelow(demo.Folder, "audit");

        Assert.Equal(files.Select(file => "again" + file["audit".Length..]), FilesBelow(demo.Folder, "again"), StringComparer.Ordinal);
        Assert.All(files, file => Assert.Equal(
            File.ReadAllBytes(Path.Combine(demo.Folder, file)), File.ReadAllBytes(Path.Combine(demo.Folder, "again" + file["audit".Length..]))));
    }

    private static string[] FilesBelow(string root, string folder) =>
    [
        .. Directory.EnumerateFiles(Path.Combine(root, folder), "*", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(root, file).Replace('\\', '/')).Order(StringComparer.Ordinal),
    ];

    [GeneratedRegex("(?<!`)`(?<text>[^`\n]+)`(?!`)", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Code();

    [GeneratedRegex(@"^[\w-]+(/|\.(tsv|toml|md)$)|^(study|impedance|audit)$", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Place();
}
