using System.Collections.Immutable;
using System.Globalization;
using nietras.SeparatedValues;

namespace ChannelAudit.Text;

/// <summary>A small table with a header, read whole: BIDS companions, impedance readings and their like.</summary>
/// <remarks>
/// Tabs as in BIDS; commas or semicolons when the header has no tab. Cells in double quotes may hold separators (RFC 4180), but no line break; a quote within a cell that does not begin with one is text. A byte order mark, CRLF and
/// blank lines are tolerated.
/// </remarks>
internal sealed record SmallTable
{
    private const long MostBytes = 1 << 26;

    // A table of samples has more, and a line of nothing but separators; each would be kept as a name and looked at for what was meant.
    private const int MostColumns = 1000;

    /// <summary>The file's name without its folder.</summary>
    public required string File { get; init; }

    /// <summary>The column names, trimmed.</summary>
    public required ImmutableArray<string> Columns { get; init; }

    /// <summary>The rows in file order.</summary>
    public required ImmutableArray<SmallTableRow> Rows { get; init; }

    /// <summary>Reads a table.</summary>
    /// <param name="path">The file.</param>
    /// <param name="kind">What it should be, for messages.</param>
    /// <exception cref="ChannelAuditException">When it cannot be read, is empty or has more than 1000 columns, or a row is too long or too short, or a quote is not closed in its line.</exception>
    public static SmallTable Read(string path, SmallTableKind kind)
    {
        string file = Path.GetFileName(path);
        try
        {
            if (Directory.Exists(path))
            {
                throw SmallTableErrors.IsFolder(path);
            }

            if (PlainFile.IsEmpty(path))
            {
                throw SmallTableErrors.Empty(file, kind);
            }

            if (new FileInfo(path).Length > MostBytes)
            {
                throw SmallTableErrors.TooLarge(file, kind);
            }

            return Parse(file, kind, System.IO.File.ReadAllText(path));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw SmallTableErrors.Unreadable(file, kind, fault);
        }
        catch (Exception fault) when (fault is NotSupportedException or InvalidDataException)
        {
            throw SmallTableErrors.OpenQuote(file, fault);
        }
    }

    /// <summary>Position of a column, or -1; case matters as in BIDS, but a different case is accepted when there is no exact match.</summary>
    public int IndexOf(string column)
    {
        int exact = Columns.IndexOf(column);
        return exact >= 0 ? exact : Columns.IndexOf(column, 0, Columns.Length, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>A cell, or null when the column is not there or the cell is missing.</summary>
    public static string? Cell(SmallTableRow row, int column) => column < 0 || IsMissing(row.Cells[column]) ? null : row.Cells[column];

    /// <summary>Position of a column that every table of its kind may have once, or -1.</summary>
    /// <exception cref="ChannelAuditException">When it is there twice.</exception>
    public int OnlyIndexOf(string column)
    {
        int index = IndexOf(column);
        return index >= 0 && Columns.Count(name => string.Equals(name, Columns[index], StringComparison.Ordinal)) > 1
            ? throw SmallTableErrors.Twice(File, Columns[index])
            : index;
    }

    private static bool IsMissing(string cell) =>
        cell.Length == 0 || cell.Equals("n/a", StringComparison.OrdinalIgnoreCase) || cell.Equals("nan", StringComparison.OrdinalIgnoreCase);

    private static SmallTable Parse(string file, SmallTableKind kind, string text)
    {
        if (text.AsSpan().Contains('\0'))
        {
            throw SmallTableErrors.Binary(file, kind);
        }

        if (string.IsNullOrWhiteSpace(text))
        {
            throw SmallTableErrors.Empty(file, kind);
        }

        SepReaderOptions options = Sep.New(Separator(text)).Reader(o => o with
        {
            HasHeader = false,
            DisableColCountCheck = true,
            Unescape = true,
            CultureInfo = CultureInfo.InvariantCulture,
        });
        using SepReader reader = options.FromText(text);
        ImmutableArray<string> columns = [];
        ImmutableArray<SmallTableRow>.Builder rows = ImmutableArray.CreateBuilder<SmallTableRow>();
        int next = 1;
        foreach (SepReader.Row row in reader)
        {
            // Of the first row the reader says that it begins in line 2.
            int line = next;
            next = row.LineNumberToExcl;

            // RFC 4180 allows a line break within quotes; here it is a quote too many, which would swallow the rows below it.
            if (next - line > 1)
            {
                throw SmallTableErrors.OpenQuote(file, line);
            }

            if (row.ColCount > MostColumns)
            {
                throw SmallTableErrors.TooWide(file, line, row.ColCount, kind);
            }

            ImmutableArray<string> cells = Cells(row, rows.Count > 0 ? rows[^1].Cells : []);
            if (cells.All(cell => cell.Length == 0) && (columns.IsEmpty || cells.Length == 1))
            {
                continue;
            }

            if (columns.IsEmpty)
            {
                columns = cells;
                continue;
            }

            if (cells.Length != columns.Length)
            {
                throw SmallTableErrors.Ragged(file, line, columns.Length, cells.Length);
            }

            rows.Add(new SmallTableRow(line, cells));
        }

        return new SmallTable { File = file, Columns = columns, Rows = rows.ToImmutable() };
    }

    private static char Separator(string text)
    {
        string header = text.TrimStart().Split(['\n', '\r'], 2)[0];
        return header.Contains('\t', StringComparison.Ordinal) ? '\t'
            : header.Contains(';', StringComparison.Ordinal) ? ';'
            : header.Contains(',', StringComparison.Ordinal) ? ',' : '\t';
    }

    // What stands in the row above, too, is kept once: recordings, channels, conditions.
    private static ImmutableArray<string> Cells(SepReader.Row row, ImmutableArray<string> above)
    {
        ImmutableArray<string>.Builder cells = ImmutableArray.CreateBuilder<string>(row.ColCount);
        for (int column = 0; column < row.ColCount; column++)
        {
            ReadOnlySpan<char> cell = row[column].Span.Trim();
            cells.Add(column < above.Length && cell.SequenceEqual(above[column]) ? above[column] : cell.ToString());
        }

        return cells.MoveToImmutable();
    }
}
