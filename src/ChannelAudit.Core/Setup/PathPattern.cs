using System.Text;
using System.Text.RegularExpressions;

namespace ChannelAudit.Setup;

/// <summary>A pattern for paths below the given root: <c>*</c> stands for any text within a name, <c>**</c> for any text, <c>?</c> for one character.</summary>
/// <remarks>The last name may be given with its extension or without. Names in braces, as <c>{participant}</c>, stand for text within a name, one character and more, that is handed out.</remarks>
public sealed partial class PathPattern
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(1);

    private readonly Regex _regex;

    private PathPattern(string text, Regex regex) => (Text, _regex) = (text, regex);

    /// <summary>The pattern as it was written.</summary>
    public string Text { get; }

    /// <summary>Reads a pattern.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="names">Names in braces that are allowed.</param>
    /// <param name="unknown">A name in braces that is not among them, or stands twice; null when all are well.</param>
    public static PathPattern? Of(string pattern, IReadOnlyCollection<string> names, out string? unknown)
    {
        StringBuilder regex = new("^");
        HashSet<string> seen = new(StringComparer.Ordinal);
        unknown = null;
        foreach (Match part in Part().Matches(pattern))
        {
            string text = part.Value;
            if (text.StartsWith('{'))
            {
                string name = text[1..^1];
                if (!names.Contains(name, StringComparer.Ordinal) || !seen.Add(name))
                {
                    unknown = text;
                    return null;
                }

                regex.Append("(?<").Append(name).Append(">[^/]+?)");
                continue;
            }

            regex.Append(text switch
            {
                "**/" => "(?:.*/)?",
                "**" => ".*",
                "*" => "[^/]*",
                "?" => "[^/]",
                _ => Regex.Escape(text),
            });
        }

        return new PathPattern(pattern, new Regex(regex.Append("(?:\\.[^./]+)?$").ToString(), RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.Singleline | RegexOptions.NonBacktracking, Longest));
    }

    /// <summary>Whether a path fits.</summary>
    /// <param name="path">Relative, with <c>/</c>.</param>
    public bool Fits(string path) => _regex.IsMatch(path);

    /// <summary>What a name in braces stands for in a path; null when the path does not fit, or the pattern has no such name.</summary>
    public string? Find(string path, string name) => _regex.Match(path) is { Success: true } match && match.Groups[name] is { Success: true } group ? group.Value : null;

    [GeneratedRegex("""\{[^}]*\}|\*\*/|\*\*|\*|\?|[^{*?]+|\{""", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Part();
}
