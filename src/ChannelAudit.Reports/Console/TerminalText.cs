using System.Globalization;
using System.Text;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Console;

/// <summary>Text that is safe for a terminal, cut and padded to columns.</summary>
internal static class TerminalText
{
    /// <summary>Text from a file without anything that a terminal would obey: control and direction characters become <c>?</c>.</summary>
    public static string Clean(string text)
    {
        StringBuilder clean = new(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            clean.Append(Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format
                or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.PrivateUse
                ? "?"
                : rune.ToString());
        }

        return clean.ToString();
    }

    /// <summary>Columns that a text takes: characters as people see them, wide ones twice.</summary>
    public static int Width(string text)
    {
        int width = 0;
        TextElementEnumerator elements = StringInfo.GetTextElementEnumerator(text);
        while (elements.MoveNext())
        {
            width += ElementWidth(elements.GetTextElement());
        }

        return width;
    }

    /// <summary>A text of exactly so many columns: padded with blanks, or cut with three dots at the end.</summary>
    public static string Fit(string text, int columns)
    {
        const string dots = "...";
        if (Width(text) <= columns)
        {
            return text + new string(' ', columns - Width(text));
        }

        StringBuilder cut = new();
        int width = 0;
        TextElementEnumerator elements = StringInfo.GetTextElementEnumerator(text);
        while (elements.MoveNext())
        {
            string element = elements.GetTextElement();
            if (width + ElementWidth(element) > columns - dots.Length)
            {
                break;
            }

            cut.Append(element);
            width += ElementWidth(element);
        }

        return cut.Append(dots).Append(' ', columns - dots.Length - width).ToString();
    }

    /// <summary>Lines of at most so many columns, broken at blanks; a word that is too long is cut.</summary>
    public static IEnumerable<string> Wrap(string text, int columns)
    {
        StringBuilder line = new();
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string fitting = Width(word) > columns ? Fit(word, columns).TrimEnd() : word;
            if (line.Length > 0 && Width(line.ToString()) + 1 + Width(fitting) > columns)
            {
                yield return line.ToString();
                line.Clear();
            }

            line.Append(line.Length > 0 ? " " : string.Empty).Append(fitting);
        }

        yield return line.ToString();
    }

    /// <summary>Shape and word of a verdict, padded to one width, coloured when asked for.</summary>
    public static string Verdict(Grade verdict, TerminalStyle style)
    {
        string shape = style.Ascii ? VerdictWords.AsciiShape(verdict) : VerdictWords.Shape(verdict);
        string text = $"{shape} {VerdictWords.Code(verdict),-12}";
        return style.Colour ? $"\u001b[{Colour(verdict)}m{text}\u001b[0m" : text;
    }

    /// <summary>Only what ASCII holds, when the terminal knows no more.</summary>
    public static string Plain(string text, TerminalStyle style)
    {
        if (!style.Ascii)
        {
            return text;
        }

        StringBuilder plain = new(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            plain.Append(rune.Value switch
            {
                0xB5 or 0x3BC => "u",
                < 0x80 => rune.ToString(),
                _ => "?",
            });
        }

        return plain.ToString();
    }

    // Bold cyan, yellow and magenta: told apart by the colour-blind, and never the only sign.
    private static string Colour(Grade verdict) => verdict switch
    {
        Grade.Pass => "36",
        Grade.Questionable => "33",
        _ => "1;35",
    };

    private static int ElementWidth(string element)
    {
        Rune first = element.EnumerateRunes().First();
        bool isWide = first.Value is (>= 0x1100 and <= 0x115F) or (>= 0x2E80 and <= 0xA4CF) or (>= 0xAC00 and <= 0xD7A3)
            or (>= 0xF900 and <= 0xFAFF) or (>= 0xFE30 and <= 0xFE6F) or (>= 0xFF00 and <= 0xFF60) or (>= 0x1F300 and <= 0x1FAFF)
            or (>= 0x20000 and <= 0x3FFFD);
        return isWide ? 2 : 1;
    }
}
