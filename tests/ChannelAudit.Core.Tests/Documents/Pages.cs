using ChannelAudit.TestKit;

namespace ChannelAudit.Core.Tests.Documents;

/// <summary>The written part of the repository.</summary>
internal static class Pages
{
    /// <summary>The repository's root folder.</summary>
    public static string Root { get; } = Path.GetDirectoryName(RepositoryRoot.Fixture(string.Empty).TrimEnd(Path.DirectorySeparatorChar))!;

    /// <summary>All pages, relative to the root, in ordinal order.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "DEVELOPERS.md",
        "README.md",
        .. Directory.EnumerateFiles(Path.Combine(Root, "docs"), "*.md", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(Root, path).Replace('\\', '/'))
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>The pages of the measures.</summary>
    public static IReadOnlyList<string> OfMeasures { get; } = [.. All.Where(page => page.StartsWith("docs/measures/", StringComparison.Ordinal))];

    /// <summary>A page's text.</summary>
    public static string Text(string page) => File.ReadAllText(Path.Combine(Root, page));
}
