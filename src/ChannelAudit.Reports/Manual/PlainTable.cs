using System.Collections.Immutable;

namespace ChannelAudit.Reports.Manual;

/// <summary>A table of Markdown in columns of plain text; what is too wide is wrapped inside its column.</summary>
internal static class PlainTable
{
    private const string Gap = "  ";
    private const int Narrowest = 8;

    /// <summary>The lines of the table.</summary>
    /// <param name="rows">Its lines in Markdown: a header, a rule, then rows.</param>
    /// <param name="width">The most characters of a line.</param>
    public static IEnumerable<string> Lines(IReadOnlyList<string> rows, int width)
    {
        ImmutableArray<ImmutableArray<string>> cells = [.. rows.Where((_, row) => row != 1).Select(Cells)];
        int[] widths = Widths(cells, width);
        bool wraps = cells.Any(row => row.Select((cell, i) => cell.Length > widths[i]).Any(isWide => isWide));
        for (int row = 0; row < cells.Length; row++)
        {
            foreach (string line in Row(cells[row], widths))
            {
                yield return line;
            }

            if (row == 0)
            {
                yield return string.Join(Gap, widths.Select(one => new string('-', one)));
            }
            else if (wraps && row + 1 < cells.Length)
            {
                yield return string.Empty;
            }
        }
    }

    private static ImmutableArray<string> Cells(string row) =>
        [.. row.Trim().Trim('|').Replace("\\|", "\0", StringComparison.Ordinal).Split('|').Select(cell => InlineText.Of(cell.Trim()).Replace('\0', '|'))];

    // The widest column gives way first.
    private static int[] Widths(ImmutableArray<ImmutableArray<string>> cells, int width)
    {
        int columns = cells.Max(row => row.Length);
        int[] widths = [.. Enumerable.Range(0, columns).Select(i => Math.Max(1, cells.Max(row => i < row.Length ? row[i].Length : 0)))];
        while (widths.Sum() + (Gap.Length * (columns - 1)) > width && widths.Max() > Narrowest)
        {
            widths[Array.IndexOf(widths, widths.Max())]--;
        }

        return widths;
    }

    private static IEnumerable<string> Row(ImmutableArray<string> cells, int[] widths)
    {
        ImmutableArray<string>[] wrapped = [.. widths.Select((width, i) => WrappedText.Lines(i < cells.Length ? cells[i] : string.Empty, width))];
        for (int line = 0; line < wrapped.Max(cell => cell.Length); line++)
        {
            yield return string.Join(Gap, wrapped.Select((cell, i) => (line < cell.Length ? cell[line] : string.Empty).PadRight(widths[i]))).TrimEnd();
        }
    }
}
