using System.Collections.Immutable;
using System.Globalization;

namespace ChannelAudit.Recordings.Text;

/// <summary>The first lines of a file, split in one dialect, and how well that fits.</summary>
internal sealed record DialectTrial
{
    /// <summary>The dialect.</summary>
    public required TextDialect Dialect { get; init; }

    /// <summary>The cells of each line.</summary>
    public required ImmutableArray<ImmutableArray<string>> Cells { get; init; }

    /// <summary>What each cell holds.</summary>
    public required ImmutableArray<ImmutableArray<CellKind>> Kinds { get; init; }

    /// <summary>The row width that holds most numbers.</summary>
    public required int Width { get; init; }

    /// <summary>Numbers x share of numbers squared, at that width.</summary>
    public required double Score { get; init; }

    /// <summary>The first line of that width with a number in it.</summary>
    public int FirstRow => Enumerable.Range(0, Cells.Length).First(IsRow);

    /// <summary>Splits the lines and judges the fit.</summary>
    public static DialectTrial Of(ImmutableArray<string> lines, TextDialect dialect)
    {
        NumberFormatInfo format = Cell.Format(dialect.DecimalSign);
        ImmutableArray<ImmutableArray<string>> cells = [.. lines.Select(line => dialect.Split(line).ToImmutableArray())];
        ImmutableArray<ImmutableArray<CellKind>> kinds = [.. cells.Select(row => row.Select(cell => Cell.Read(cell, format, out _)).ToImmutableArray())];
        (int width, double score) = BestWidth(kinds);
        return new DialectTrial { Dialect = dialect, Cells = cells, Kinds = kinds, Width = width, Score = score };
    }

    /// <summary>Whether the line is as wide as the table and holds a number.</summary>
    public bool IsRow(int line) => Kinds[line].Length == Width && Kinds[line].Any(IsNumeric);

    /// <summary>The rows of the table's width from a line on, blank lines left out.</summary>
    public ImmutableArray<ImmutableArray<string>> RowsFrom(int line) =>
        [.. Enumerable.Range(line, Cells.Length - line).Where(IsRow).Select(at => Cells[at])];

    /// <summary>How many lines from there on are not blank.</summary>
    public int NonBlankFrom(int line) => Cells.Skip(line).Count(row => row.Any(cell => cell.Length > 0));

    /// <summary>Whether a cell takes part as a number or a time.</summary>
    public static bool IsNumeric(CellKind kind) => kind is CellKind.Number or CellKind.Clock or CellKind.Infinite;

    private static (int Width, double Score) BestWidth(ImmutableArray<ImmutableArray<CellKind>> kinds)
    {
        (int Width, double Score) best = (0, 0);
        foreach (IGrouping<int, ImmutableArray<CellKind>> rows in kinds.Where(row => row.Any(IsNumeric)).GroupBy(row => row.Length))
        {
            double numbers = rows.Sum(row => row.Count(IsNumeric));
            double words = rows.Sum(row => row.Count(kind => kind == CellKind.Word));
            double share = numbers / (numbers + words);
            double score = numbers * share * share;
            if (score > best.Score)
            {
                best = (rows.Key, score);
            }
        }

        return best;
    }
}
