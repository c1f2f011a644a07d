using System.Buffers;
using System.Text;
using ChannelAudit.Reports.Console;

namespace ChannelAudit.Reports.Methods;

/// <summary>Text from files inside a Markdown page: it stays text and on its line.</summary>
internal static class MarkdownText
{
    // What can start markup inside a line or end a table's cell; any ASCII punctuation may stand behind a backslash (CommonMark 0.31, 2.4).
    private static readonly SearchValues<char> Markup = SearchValues.Create("\\`*_{}[]<>|~&$:@");

    /// <summary>The text with markup made harmless and control characters shown as question marks.</summary>
    public static string Escape(string text)
    {
        StringBuilder safe = new(text.Length);
        foreach (char sign in TerminalText.Clean(text))
        {
            safe.Append(Markup.Contains(sign) ? "\\" : string.Empty).Append(sign);
        }

        return safe.ToString();
    }
}
