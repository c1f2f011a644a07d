using System.Collections.Immutable;

namespace ChannelAudit.Reports.Manual;

/// <summary>The pages of <c>docs/measures</c> and the README as they were when the program was built: there is one text only.</summary>
internal static class ManualText
{
    private const string Folder = "manual/";
    private const string Ending = ".md";

    /// <summary>The names of all pages, in ordinal order: reason codes, and measures that belong to no reason.</summary>
    public static ImmutableArray<string> Names { get; } =
    [
        .. typeof(ManualText).Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Folder, StringComparison.Ordinal))
            .Select(name => name[Folder.Length..^Ending.Length])
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>The README.</summary>
    public static string Readme => Read("README.md");

    /// <summary>A page, in Markdown.</summary>
    /// <param name="name">One of the names.</param>
    public static string Page(string name) => Read(Folder + name + Ending);

    private static string Read(string resource)
    {
        using Stream stream = typeof(ManualText).Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"the build embedded no {resource}");
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }
}
