using System.Text;

namespace ChannelAudit.Reports.Manual;

/// <summary>A page of Markdown as plain text: headings underlined, paragraphs and lists wrapped, tables in columns, code as it stands.</summary>
internal static class PlainPage
{
    private const string Fence = "```";

    /// <summary>The page, lines ended by LF.</summary>
    /// <param name="markdown">The page.</param>
    /// <param name="width">The most characters of a line; code and single long words may be longer.</param>
    public static string Of(string markdown, int width)
    {
        StringBuilder text = new();
        string[] lines = markdown.TrimEnd().Split('\n');
        for (int at = 0; at < lines.Length;)
        {
            int end = EndOfBlock(lines, at);
            foreach (string line in Block(lines[at..end], width))
            {
                text.Append(line).Append('\n');
            }

            at = end;
        }

        return text.ToString();
    }

    // A block is a blank or a heading, a fence with all inside, a table, a list's item, or a paragraph.
    private static int EndOfBlock(string[] lines, int from)
    {
        string first = lines[from];
        int end = from + 1;
        if (first.StartsWith(Fence, StringComparison.Ordinal))
        {
            int closing = Array.IndexOf(lines, Fence, end);
            return closing < 0 ? lines.Length : closing + 1;
        }

        if (first.Length == 0 || IsHeading(first))
        {
            return end;
        }

        bool isTable = IsTable(first);
        while (end < lines.Length && GoesOn(lines[end], isTable))
        {
            end++;
        }

        return end;
    }

    private static bool GoesOn(string line, bool isTable) =>
        line.Length > 0 && !IsHeading(line) && IsTable(line) == isTable && (isTable || Marker(line).Length == 0);

    private static IEnumerable<string> Block(string[] lines, int width)
    {
        if (lines[0].StartsWith(Fence, StringComparison.Ordinal))
        {
            return lines[1..^1].Select(line => $"  {line}");
        }

        if (IsHeading(lines[0]))
        {
            string heading = InlineText.Of(lines[0].TrimStart('#').Trim());
            return [heading, new string(lines[0].StartsWith("##", StringComparison.Ordinal) ? '-' : '=', heading.Length)];
        }

        if (IsTable(lines[0]))
        {
            return PlainTable.Lines(lines, width);
        }

        string marker = Marker(lines[0]);
        string words = InlineText.Of(string.Join(' ', lines)[marker.Length..]);
        string hanging = new(' ', marker.Length);
        return WrappedText.Lines(words, width - marker.Length).Select((line, i) => (i == 0 ? marker + line : hanging + line).TrimEnd());
    }

    private static bool IsHeading(string line) => line.StartsWith('#');

    private static bool IsTable(string line) => line.StartsWith('|');

    /// <summary>What a list's item begins with, its indent included: <c>- </c> or <c>1. </c>; empty for other lines.</summary>
    private static string Marker(string line)
    {
        int from = line.Length - line.TrimStart().Length;
        int digits = line.Skip(from).TakeWhile(char.IsAsciiDigit).Count();
        int length = digits > 0 && line.AsSpan(from + digits).StartsWith(". ", StringComparison.Ordinal) ? digits + 2
            : line.AsSpan(from).StartsWith("- ", StringComparison.Ordinal) ? 2
            : 0;
        return length == 0 ? string.Empty : line[..(from + length)];
    }
}
