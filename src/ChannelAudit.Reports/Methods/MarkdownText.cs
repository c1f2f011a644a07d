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
        string clean = TerminalText.Clean(text);
        StringBuilder safe = new(clean.Length);
        for (int place = 0; place < clean.Length; place++)
        {
            safe.Append(Markup.Contains(clean[place]) && Acts(clean, place) ? "\\" : string.Empty).Append(clean[place]);
        }

        return safe.ToString();
    }

    // A colon makes an address or a picture only with something behind it, an underscore inside a word nothing.
    private static bool Acts(string text, int place) => text[place] switch
    {
        ':' => place + 1 < text.Length && !char.IsWhiteSpace(text[place + 1]),
        '_' => place == 0 || place + 1 == text.Length || !char.IsLetterOrDigit(text[place - 1]) || !char.IsLetterOrDigit(text[place + 1]),
        _ => true,
    };
}
