using System.Text.RegularExpressions;
using Xunit;

namespace ChannelAudit.Core.Tests.Documents;

/// <summary>Links between pages lead to pages, and to headings that are there.</summary>
public sealed partial class LinkTests
{
    public static TheoryData<string> EveryPage => [.. Pages.All];

    [Theory]
    [MemberData(nameof(EveryPage))]
    public void EveryRelativeLinkLeadsSomewhere(string page)
    {
        string folder = Path.GetDirectoryName(Path.Combine(Pages.Root, page))!;

        string[] broken = [.. Targets(page).Where(target => !Leads(page, folder, target))];

        Assert.Empty(broken);
    }

    [Fact]
    public void EveryTestThatTheValidationPageNamesIsThere()
    {
        HashSet<string> classes =
        [
            .. Directory.EnumerateFiles(Path.Combine(Pages.Root, "tests"), "*Tests.cs", SearchOption.AllDirectories)
                .Select(path => Path.GetFileNameWithoutExtension(path)),
        ];
        string[] named = [.. TestName().Matches(Pages.Text("docs/validation.md")).Select(match => match.Groups["name"].Value)];

        Assert.NotEmpty(named);
        Assert.All(named, name => Assert.Contains(name, classes));
    }

    private static IEnumerable<string> Targets(string page) => Link().Matches(Pages.Text(page))
        .Select(match => match.Groups["target"].Value)
        .Where(target => !target.Contains("://", StringComparison.Ordinal));

    private static bool Leads(string page, string folder, string target)
    {
        string[] parts = target.Split('#', 2);
        string path = parts[0].Length == 0 ? Path.Combine(Pages.Root, page) : Path.GetFullPath(Path.Combine(folder, parts[0]));
        if (!File.Exists(path))
        {
            return false;
        }

        return parts.Length == 1 || Anchors(File.ReadAllText(path)).Contains(parts[1], StringComparer.Ordinal);
    }

    private static IEnumerable<string> Anchors(string text) => text.Split('\n')
        .Where(line => line.StartsWith('#'))
        .Select(line => NotInAnchor().Replace(line.TrimStart('#').Trim().ToLowerInvariant(), string.Empty).Replace(' ', '-'));

    [GeneratedRegex(@"\]\((?<target>[^)\s]+)\)", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Link();

    [GeneratedRegex("`(?<name>[A-Za-z0-9]+Tests)`", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex TestName();

    [GeneratedRegex(@"[^\p{L}\p{N}\s_-]", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex NotInAnchor();
}
