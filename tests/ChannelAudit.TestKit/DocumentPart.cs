namespace ChannelAudit.TestKit;

/// <summary>Reads parts of the documentation that tests hold against the program.</summary>
public static class DocumentPart
{
    /// <summary>The lines between the marks <c>NAME: begin</c> and <c>NAME: end</c> of a page.</summary>
    /// <param name="page">Path below <c>docs/</c>.</param>
    /// <param name="name">The name in the marks.</param>
    public static string[] Between(string page, string name)
    {
        string[] lines = Lines(page);
        int from = Array.IndexOf(lines, $"<!-- {name}: begin -->");
        int to = Array.IndexOf(lines, $"<!-- {name}: end -->");
        return from >= 0 && to > from ? lines[(from + 1)..to] : throw new InvalidDataException($"{page} has no part '{name}'.");
    }

    /// <summary>The content of each fenced block of a language, in order.</summary>
    /// <param name="page">Path below <c>docs/</c>.</param>
    /// <param name="language">The word behind the fence.</param>
    public static IReadOnlyList<string> Blocks(string page, string language)
    {
        string[] lines = Lines(page);
        var blocks = new List<string>();
        for (int index = 0; index < lines.Length; index++)
        {
            if (string.Equals(lines[index], "```" + language, StringComparison.Ordinal))
            {
                int end = Array.IndexOf(lines, "```", index + 1);
                blocks.Add(string.Join('\n', lines[(index + 1)..end]) + "\n");
                index = end;
            }
        }

        return blocks;
    }

    private static string[] Lines(string page) => File.ReadAllText(Path.GetFullPath(RepositoryRoot.Fixture("../docs/" + page))).Split('\n');
}
