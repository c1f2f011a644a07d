using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Text;

/// <summary>Finds header, unit row and first row of numbers.</summary>
internal static class HeaderFinder
{
    /// <summary>Finds where the table starts and what stands above it.</summary>
    /// <exception cref="ChannelAuditException">When the header names another number of columns than the rows have.</exception>
    public static HeaderPlace Find(DialectTrial trial, string file)
    {
        int data = FirstDataLine(trial);
        int above = PreviousNonBlank(trial, data);
        int units = above >= 0 && IsUnitRow(trial.Cells[above], trial.Width) ? above : -1;
        int header = units >= 0 ? PreviousNonBlank(trial, units) : above;
        if (header < 0)
        {
            return new HeaderPlace([], -1, units, data);
        }

        // A row that starts with a number is no header, whatever else is wrong with it: it is left to the check of the rows.
        if (trial.Kinds[header].Length > 1 && DialectTrial.IsNumeric(trial.Kinds[header][0]))
        {
            return new HeaderPlace([], -1, -1, header);
        }

        ImmutableArray<string> cells = WithoutCommentSign(trial, header);
        if (Fits(cells, trial, data))
        {
            return new HeaderPlace(cells, header, units, data);
        }

        // One cell is a title or a line of dashes, "key: value" is a preamble; several names right above the numbers do not fit them.
        bool isPreamble = cells.Length < 2 || trial.Dialect.IsBlankSeparated || cells[0].AsSpan().IndexOfAny(':', '=') >= 0
            || header < (units >= 0 ? units : data) - 1;
        return isPreamble
            ? new HeaderPlace([], -1, units, data)
            : throw TextErrors.HeaderMismatch(file, header + 1, cells.Length, data + 1, trial.Width);
    }

    // "# time emg": the sign marks a comment for some programs and is no part of the first name.
    private static ImmutableArray<string> WithoutCommentSign(DialectTrial trial, int line)
    {
        ImmutableArray<string> cells = trial.Cells[line];
        if (cells.IsEmpty || cells[0] is not ['#' or '%' or '/', ..])
        {
            return cells;
        }

        string first = cells[0].TrimStart('#', '%', '/', ' ', '\t');
        return first.Length == 0 && trial.Dialect.IsBlankSeparated ? cells.RemoveAt(0) : cells.SetItem(0, first);
    }

    // The table starts at the first row whose numbers stand where numbers stand in the table, with nothing but such rows below the last header.
    private static int FirstDataLine(DialectTrial trial)
    {
        for (int header = trial.Cells.Length - 2; header >= 0; header--)
        {
            if (!IsWords(trial, header))
            {
                continue;
            }

            int data = Enumerable.Range(header + 1, trial.Cells.Length - header - 1).FirstOrDefault(trial.IsRow, -1);
            if (data >= 0 && !IsInsideTable(trial, header, NumericColumns(trial, data)))
            {
                return data;
            }
        }

        int first = trial.FirstRow;
        return FirstCompatible(trial, first, NumericColumns(trial, first));
    }

    private static bool IsWords(DialectTrial trial, int line)
    {
        ImmutableArray<CellKind> kinds = trial.Kinds[line];
        return kinds.Length > 0 && Math.Abs(kinds.Length - trial.Width) <= 1 && kinds.Any(kind => kind == CellKind.Word)
            && !kinds.Any(DialectTrial.IsNumeric);
    }

    // A line of words between rows of numbers is a fault in the data, not a second header.
    private static bool IsInsideTable(DialectTrial trial, int line, ImmutableArray<bool> numeric) =>
        Enumerable.Range(0, line).Any(above => IsCompatible(trial, above, numeric));

    private static int FirstCompatible(DialectTrial trial, int from, ImmutableArray<bool> numeric) =>
        Enumerable.Range(from, trial.Cells.Length - from).FirstOrDefault(line => IsCompatible(trial, line, numeric), from);

    private static ImmutableArray<bool> NumericColumns(DialectTrial trial, int from)
    {
        int[] balance = new int[trial.Width];
        for (int line = from; line < trial.Cells.Length; line++)
        {
            for (int column = 0; trial.IsRow(line) && column < trial.Width; column++)
            {
                CellKind kind = trial.Kinds[line][column];
                balance[column] += DialectTrial.IsNumeric(kind) ? 1 : kind == CellKind.Word ? -1 : 0;
            }
        }

        return [.. balance.Select(value => value > 0)];
    }

    private static bool IsCompatible(DialectTrial trial, int line, ImmutableArray<bool> numeric)
    {
        ImmutableArray<CellKind> kinds = trial.Kinds[line];
        return trial.IsRow(line) && !kinds.Where((kind, column) => numeric[column] && kind == CellKind.Word).Any();
    }

    private static bool IsUnitRow(ImmutableArray<string> cells, int width)
    {
        int units = cells.Count(cell => TextUnit.Parse(cell) is not null);
        bool onlyUnits = cells.All(cell => cell.Length == 0 || cell.All(sign => sign is '-' or '[' or ']' or '(' or ')') || TextUnit.Parse(cell) is not null);
        return units > 0 && onlyUnits && Math.Abs(cells.Length - width) <= 1;
    }

    private static bool Fits(ImmutableArray<string> names, DialectTrial trial, int data)
    {
        bool lastColumnIsEmpty = trial.RowsFrom(data).All(row => row[^1].Length == 0);
        return !names.All(name => name.Length == 0)
            && (names.Length == trial.Width
                || (names.Length == trial.Width - 1 && lastColumnIsEmpty)
                || (names.Length == trial.Width + 1 && names[^1].Length == 0));
    }

    private static int PreviousNonBlank(DialectTrial trial, int line)
    {
        int at = line - 1;
        while (at >= 0 && trial.Cells[at].All(cell => cell.Length == 0))
        {
            at--;
        }

        return at;
    }
}
