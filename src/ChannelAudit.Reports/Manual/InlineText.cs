using System.Text.RegularExpressions;

namespace ChannelAudit.Reports.Manual;

/// <summary>A line of Markdown without its signs: links as their words, no stars and no back ticks.</summary>
internal static partial class InlineText
{
    /// <summary>The line as people read it.</summary>
    public static string Of(string markdown)
    {
        string words = Link().Replace(markdown, "${words}");
        string plain = Bold().Replace(words, "${words}").Replace("`", string.Empty, StringComparison.Ordinal);
        return Emphasis().Replace(plain, "${words}").Replace("\\|", "|", StringComparison.Ordinal);
    }

    [GeneratedRegex(@"!?\[(?<words>[^\]]*)\]\([^)\s]*\)", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Link();

    [GeneratedRegex(@"\*\*(?<words>[^*]+)\*\*", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Bold();

    // A star beside a space is a sign of multiplication.
    [GeneratedRegex(
        @"(?<![\w*])\*(?<words>[^\s*][^*]*)\*(?![\w*])", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Emphasis();
}
