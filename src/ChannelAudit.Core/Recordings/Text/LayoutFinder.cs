using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Text;

/// <summary>Finds the table in the first lines of a text file.</summary>
/// <remarks>
/// Every dialect is tried. The one in which most cells of the commonest row width are numbers is taken (numbers x share of numbers squared, so that
/// a wrong separator, which makes words of numbers, loses even when it makes more columns); equals are decided by <see cref="TextDialect.All"/>.
/// </remarks>
internal static class LayoutFinder
{
    // Each column costs some kilobytes before its first sample is read.
    private const int MostColumns = 1000;

    /// <summary>Finds the table.</summary>
    /// <exception cref="ChannelAuditException">When there is none, it is ambiguous, or it has more than 1000 columns.</exception>
    public static TextLayout Find(ImmutableArray<string> lines, string file)
    {
        DialectTrial? best = null;
        foreach (TextDialect dialect in TextDialect.All)
        {
            DialectTrial trial = DialectTrial.Of(lines, dialect);
            if (trial.Score > (best?.Score ?? 0))
            {
                best = trial;
            }
        }

        if (best is null)
        {
            throw TextErrors.NoTable(file);
        }

        if (best.Width > MostColumns)
        {
            throw TextErrors.TooWide(file, best.FirstRow + 1, MostColumns);
        }

        RefuseAmbiguousComma(best, lines, file);
        HeaderPlace place = HeaderFinder.Find(best, file);
        ImmutableArray<ImmutableArray<string>> rows = best.RowsFrom(place.DataAt);
        if (rows.Length < best.NonBlankFrom(place.DataAt) / 2.0)
        {
            throw TextErrors.NoTable(file);
        }

        int columns = ColumnsWithoutTrailing(best.Width, place.Names, rows);
        return new TextLayout
        {
            Dialect = best.Dialect,
            Columns = columns,
            Preamble = [.. lines.Take(place.TableAt).Where(line => !string.IsNullOrWhiteSpace(line))],
            Header = [.. place.Names.Take(columns)],
            Units = place.UnitsAt < 0 ? [] : [.. best.Cells[place.UnitsAt].Take(columns)],
            HeaderLine = place.NamesAt + 1,
            DataLine = place.DataAt + 1,
            Rows = rows,
        };
    }

    // "EMG" above "12,5": two columns of whole numbers, or one column with a decimal comma? Both readings are possible; neither is taken.
    private static void RefuseAmbiguousComma(DialectTrial best, ImmutableArray<string> lines, string file)
    {
        if (best.Dialect != new TextDialect(',', '.') || best.Width != 2)
        {
            return;
        }

        int first = best.FirstRow;
        bool allWhole = best.RowsFrom(first).All(row => row.All(cell => cell.All(char.IsAsciiDigit) || cell.StartsWith('-')));
        string above = lines.Take(first).LastOrDefault(line => !string.IsNullOrWhiteSpace(line)) ?? string.Empty;
        bool headerHasOneName = above.Length > 0 && !above.Contains(',', StringComparison.Ordinal);
        if (allWhole && headerHasOneName)
        {
            throw TextErrors.AmbiguousComma(file, first + 1, lines[first].Trim());
        }
    }

    private static int ColumnsWithoutTrailing(int width, ImmutableArray<string> header, ImmutableArray<ImmutableArray<string>> rows)
    {
        bool lastIsNameless = header.Length < width || header[width - 1].Length == 0;
        bool lastIsEmpty = width > 1 && rows.All(row => row[width - 1].Length == 0);
        return lastIsNameless && lastIsEmpty ? width - 1 : width;
    }
}
