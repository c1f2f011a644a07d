using System.Text.Json;
using System.Text.RegularExpressions;
using Xunit;

namespace ChannelAudit.Core.Tests.Documents;

/// <summary>The page that lists what others made holds every package of the lock files in the version that is locked, and nothing else.</summary>
public sealed partial class ThirdPartyTests
{
    private const string Page = "docs/third-party.md";

    [Fact]
    public void EveryPackageThatIsLockedIsListedWithItsVersionAndLicence()
    {
        string[] listed = [.. Row().Matches(Pages.Text(Page)).Select(row => $"{row.Groups["name"].Value} {row.Groups["version"].Value}")];
        string[] locked = [.. NuGet().Concat(Npm()).Distinct(StringComparer.Ordinal)];

        Assert.True(locked.Length > 50, "lock files were not found");
        Assert.Equal(locked.Order(StringComparer.Ordinal), listed.Order(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    [Fact]
    public void PackagesOfTheProgramStandInItsOwnTable()
    {
        string text = Pages.Text(Page);
        string own = text[..text.IndexOf("## Only to build and test", StringComparison.Ordinal)];
        string[] shipped = [.. Locked("src/ChannelAudit.Cli/packages.lock.json").Except(Locked("src/ChannelAudit.Signals/packages.lock.json").Where(IsAnalyzer), StringComparer.Ordinal)];

        Assert.All(shipped, package => Assert.Contains($"| {package.Replace(" ", " | ", StringComparison.Ordinal)} | ", own, StringComparison.Ordinal));
    }

    private static bool IsAnalyzer(string package) => package.Contains("Analyzer", StringComparison.Ordinal);

    private static IEnumerable<string> NuGet() => Directory.EnumerateFiles(Pages.Root, "packages.lock.json", SearchOption.AllDirectories)
        .Select(path => Path.GetRelativePath(Pages.Root, path))
        .Where(path => path.StartsWith("src", StringComparison.Ordinal) || path.StartsWith("tests", StringComparison.Ordinal))
        .SelectMany(Locked);

    private static IEnumerable<string> Locked(string path)
    {
        using JsonDocument file = JsonDocument.Parse(Pages.Text(path));
        return
        [
            .. file.RootElement.GetProperty("dependencies").EnumerateObject()
                .SelectMany(framework => framework.Value.EnumerateObject())
                .Where(package => package.Value.TryGetProperty("resolved", out _))
                .Select(package => $"{package.Name} {package.Value.GetProperty("resolved").GetString()}"),
        ];
    }

    private static IEnumerable<string> Npm() => new[] { "browser", "parquet" }.SelectMany(folder => Npm($"fixtures/{folder}/package-lock.json"));

    private static IEnumerable<string> Npm(string path)
    {
        const string Folder = "node_modules/";
        using JsonDocument file = JsonDocument.Parse(Pages.Text(path));
        return
        [
            .. file.RootElement.GetProperty("packages").EnumerateObject()
                .Where(package => package.Name.Length > 0)
                .Select(package => $"{package.Name[(package.Name.LastIndexOf(Folder, StringComparison.Ordinal) + Folder.Length)..]} {package.Value.GetProperty("version").GetString()}"),
        ];
    }

    // | name | version | licence | ...
    [GeneratedRegex(@"^\| (?<name>[A-Za-z][\w.-]*) \| (?<version>\d[\w.-]*) \| (MIT|Apache-2\.0|BSD-[23]-Clause|MS-PL|MPL-2\.0)[^|]* \|", RegexOptions.Multiline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Row();
}
