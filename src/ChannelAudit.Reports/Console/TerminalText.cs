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
    public static int Width(string text) => Elements(text).Sum(ElementWidth);

    /// <summary>A text of exactly so many columns: padded with blanks, or cut in its middle, since names often differ only at their end.</summary>
    /// <param name="text">The text.</param>
    /// <param name="columns">Four and more, so that something is left on both sides of the three dots.</param>
    public static string Fit(string text, int columns)
    {
        const string dots = "...";
        if (Width(text) <= columns)
        {
            return text + new string(' ', columns - Width(text));
        }

        string[] elements = [.. Elements(text)];
        int endColumns = (columns - dots.Length) / 2;
        string start = string.Concat(Fitting(elements, columns - dots.Length - endColumns));
        string end = string.Concat(Fitting(elements.Reverse(), endColumns).Reverse());
        return start + dots + end + new string(' ', columns - dots.Length - Width(start) - Width(end));
    }

    /// <summary>Lines of at most so many columns, broken at blanks; a word that is too long is cut in its middle.</summary>
    public static IEnumerable<string> Wrap(string text, int columns) =>
        Broken(text, columns, word => Width(word) > columns ? Fit(word, columns).TrimEnd() : word);

    /// <summary>Lines broken at blanks; a word that is too long, as a path may be, has a line to itself and stays whole, so that it can be copied.</summary>
    public static IEnumerable<string> WrapWhole(string text, int columns) => Broken(text, columns, word => word);

    /// <summary>Adds a text in lines that fit, each after its indent and ended by LF.</summary>
    /// <param name="text">Where to.</param>
    /// <param name="line">The text.</param>
    /// <param name="indent">Before the first line.</param>
    /// <param name="further">Before the others.</param>
    /// <param name="style">For the columns.</param>
    public static void AppendLines(StringBuilder text, string line, string indent, string further, TerminalStyle style)
    {
        string before = indent;
        foreach (string part in Wrap(line, style.Columns - Math.Max(indent.Length, further.Length)))
        {
            text.Append(before).Append(part).Append('\n');
            before = further;
        }
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
                0x3A9 or 0x2126 => "ohm",
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

    private static IEnumerable<string> Broken(string text, int columns, Func<string, string> fitting)
    {
        StringBuilder line = new();
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(fitting))
        {
            if (line.Length > 0 && Width(line.ToString()) + 1 + Width(word) > columns)
            {
                yield return line.ToString();
                line.Clear();
            }

            line.Append(line.Length > 0 ? " " : string.Empty).Append(word);
        }

        yield return line.ToString();
    }

    private static IEnumerable<string> Elements(string text)
    {
        TextElementEnumerator elements = StringInfo.GetTextElementEnumerator(text);
        while (elements.MoveNext())
        {
            yield return elements.GetTextElement();
        }
    }

    private static IEnumerable<string> Fitting(IEnumerable<string> elements, int columns)
    {
        int width = 0;
        return elements.TakeWhile(element => (width += ElementWidth(element)) <= columns);
    }

    // Wide by the East Asian Width of Unicode (UAX 11), emoji included; what follows the first sign of an element joins it and takes no room of its own.
    private static int ElementWidth(string element)
    {
        const string drawnAsEmoji = "\uFE0F";
        Rune first = element.EnumerateRunes().First();
        if (Rune.GetUnicodeCategory(first) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark)
        {
            return 0;
        }

        bool isWide = first.Value is (>= 0x1100 and <= 0x115F) or (>= 0x2E80 and <= 0xA4CF) or (>= 0xA960 and <= 0xA97C) or (>= 0xAC00 and <= 0xD7A3)
            or (>= 0xF900 and <= 0xFAFF) or (>= 0xFE30 and <= 0xFE6F) or (>= 0xFF00 and <= 0xFF60) or (>= 0xFFE0 and <= 0xFFE6)
            or (>= 0x1F300 and <= 0x1FAFF) or (>= 0x20000 and <= 0x3FFFD);
        return isWide || element.Contains(drawnAsEmoji, StringComparison.Ordinal) ? 2 : 1;
    }
}
