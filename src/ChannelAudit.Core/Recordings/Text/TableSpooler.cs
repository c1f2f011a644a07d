using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using nietras.SeparatedValues;

namespace ChannelAudit.Recordings.Text;

/// <summary>Reads every row of a table once, checks each cell and spools the numbers.</summary>
internal sealed class TableSpooler
{
    private readonly string _file;
    private readonly TextLayout _layout;
    private readonly ColumnPlan[] _plans;
    private readonly NumberFormatInfo _format;
    private readonly ImmutableArray<ColumnTally> _tallies;
    private readonly ImmutableArray<int> _spoolColumns;
    private readonly ImmutableArray<double> _scales;
    private readonly LineMap _lines = new();
    private readonly TimeCells? _times;
    private readonly double[] _numbers;
    private long _blankLine;
    private long _lastBlankLine;

    /// <summary>Prepares for one table.</summary>
    /// <param name="file">The file's name, for messages.</param>
    /// <param name="layout">How it is written.</param>
    /// <param name="plans">What each column is for.</param>
    /// <param name="scales">What each column's numbers are multiplied by.</param>
    public TableSpooler(string file, TextLayout layout, ImmutableArray<ColumnPlan> plans, ImmutableArray<double> scales)
    {
        _file = file;
        _layout = layout;
        _plans = [.. plans];
        _scales = scales;
        _format = Cell.Format(layout.Dialect.DecimalSign);
        _tallies = [.. plans.Select(_ => new ColumnTally())];
        int next = 0;
        _spoolColumns = [.. plans.Select(plan => plan.Role == ColumnRole.Text ? -1 : next++)];
        _numbers = new double[next];
        _times = plans.FirstOrDefault(plan => plan.Role is ColumnRole.Time or ColumnRole.Counter) is { } axis
            ? new TimeCells(file, axis, layout.Dialect)
            : null;
    }

    /// <summary>Reads the rows into a new spool.</summary>
    /// <param name="stream">The whole text.</param>
    /// <param name="encoding">How it is encoded.</param>
    /// <param name="folder">Where the spool is made.</param>
    /// <exception cref="ChannelAuditException">When a row or a cell is not as it should be.</exception>
    public SpooledTable Spool(Stream stream, Encoding encoding, string? folder)
    {
        SampleSpool spool = SampleSpool.Create(_file, folder, _numbers.Length);
        try
        {
            ReadRows(stream, encoding, spool);
            spool.Complete();
        }
        catch
        {
            spool.Dispose();
            throw;
        }

        return new SpooledTable
        {
            Spool = spool,
            Plans = [.. _plans],
            SpoolColumns = _spoolColumns,
            Tallies = _tallies,
            Lines = _lines,
            Times = _times,
            BlankLine = _blankLine,
        };
    }

    // Plain rows by their bytes; from the first that is not plain on by the splitter.
    private void ReadRows(Stream stream, Encoding encoding, SampleSpool spool)
    {
        bool canBePlain = PlainRows.CanBeIn(encoding, _layout.Dialect) && PlainRows.TryGoTo(stream, _layout.DataLine);
        long firstLine = _layout.DataLine;
        if (canBePlain && !TryPlainRows(stream, spool, ref firstLine))
        {
            return;
        }

        if (!canBePlain)
        {
            stream.Position = 0;
        }

        using StreamReader reader = new(stream, encoding, detectEncodingFromByteOrderMarks: !canBePlain, bufferSize: 1 << 16, leaveOpen: true);
        for (int line = 1; line < _layout.DataLine && !canBePlain; line++)
        {
            _ = reader.ReadLine();
        }

        ReadRows(reader, firstLine, spool);
    }

    /// <summary>Reads plain rows; false when the text ended with them, else the stream stands at the row that is not plain.</summary>
    private bool TryPlainRows(Stream stream, SampleSpool spool, ref long line)
    {
        PlainRows rows = new(stream, _layout.Dialect, _layout.Columns);
        for (; ; line++)
        {
            switch (rows.Next())
            {
                case PlainLine.Row:
                    TakeRow(rows, spool, line);
                    break;
                case PlainLine.Blank:
                    NoteBlank(line);
                    break;
                case PlainLine.NotPlain:
                    stream.Position = rows.Position;
                    return true;
                default:
                    return false;
            }
        }
    }

    private void TakeRow(PlainRows rows, SampleSpool spool, long line)
    {
        StartRow(spool.Rows, line);
        ReadOnlySpan<PlainCell> cells = rows.Cells;
        for (int column = 0; column < cells.Length; column++)
        {
            ref readonly PlainCell cell = ref cells[column];
            if (!cell.IsNumber || !TryTake(cell, column, spool.Rows, line))
            {
                Take(Encoding.ASCII.GetString(rows.BytesOf(cell)), column, spool.Rows, line);
            }
        }

        spool.Append(_numbers);
    }

    private bool TryTake(in PlainCell cell, int column, long row, long line)
    {
        ColumnPlan plan = _plans[column];
        if (plan.Role is ColumnRole.Text || plan.IsClock || IsBeyond(cell.Value, column))
        {
            return false;
        }

        if (plan.Role is ColumnRole.Time or ColumnRole.Counter)
        {
            _numbers[_spoolColumns[column]] = _times!.Read(cell.Value, cell.Decimals, line);
            return true;
        }

        _tallies[column].Number(row, cell.Value, cell.Decimals);
        _numbers[_spoolColumns[column]] = cell.Value * _scales[column];
        return true;
    }

    private void NoteBlank(long line) => _lastBlankLine = _lastBlankLine == 0 ? line : _lastBlankLine;

    private void StartRow(long row, long line)
    {
        // Blank lines at the end say nothing; between rows they may have been rows.
        _blankLine = _blankLine == 0 ? _lastBlankLine : _blankLine;
        _lines.Add(row, line);
    }

    private void ReadRows(TextReader reader, long firstLine, SampleSpool spool)
    {
        bool blanks = _layout.Dialect.IsBlankSeparated;
        SepReaderOptions options = Sep.New(blanks ? '\t' : _layout.Dialect.Separator).Reader(o => o with
        {
            HasHeader = false,
            DisableColCountCheck = true,
            Unescape = true,
            DisableQuotesParsing = blanks,
            CultureInfo = CultureInfo.InvariantCulture,
        });
        using BlankRunReader runs = new(reader);
        using SepReader rows = options.From(blanks ? runs : reader);
        long nextLine = firstLine;
        foreach (SepReader.Row row in rows)
        {
            // The splitter counts the line on which a row starts one too far for the first row; where rows end it counts right.
            long line = nextLine;
            nextLine = row.LineNumberToExcl + firstLine - 1;
            if (row.ColCount == 1 && row[0].Span.Trim().IsEmpty)
            {
                NoteBlank(line);
                continue;
            }

            if (row.ColCount != _layout.Columns && !(row.ColCount == _layout.Columns + 1 && row[_layout.Columns].Span.Trim().IsEmpty))
            {
                throw TextErrors.Ragged(_file, line, _layout.Columns, row.ColCount);
            }

            StartRow(spool.Rows, line);
            for (int column = 0; column < _plans.Length; column++)
            {
                Take(row[column].Span, column, spool.Rows, line);
            }

            spool.Append(_numbers);
        }
    }

    private void Take(ReadOnlySpan<char> text, int column, long row, long line)
    {
        int target = _spoolColumns[column];
        if (target < 0)
        {
            return;
        }

        ColumnPlan plan = _plans[column];
        if (plan.Role is ColumnRole.Time or ColumnRole.Counter)
        {
            _numbers[target] = _times!.Read(text, line);
            return;
        }

        switch (plan.Role == ColumnRole.Text ? CellKind.Missing : Cell.Read(text, _format, out _numbers[target]))
        {
            case CellKind.Number when plan is { Role: ColumnRole.Signal, NotAudited: null } && IsBeyond(_numbers[target], column):
                throw TextErrors.Beyond(_file, line, plan.RawLabel, text.Trim().ToString());
            case CellKind.Number:
                _tallies[column].Number(row, _numbers[target], text, _layout.Dialect.DecimalSign);
                _numbers[target] *= _scales[column];
                break;
            case CellKind.Missing:
                _numbers[target] = double.NaN;
                _tallies[column].Gap(row, line);
                break;
            case CellKind.Infinite:
                throw TextErrors.Infinite(_file, line, plan.RawLabel, text.Trim().ToString());
            default:
                TakeWord(text, column, row, line);
                break;
        }
    }

    private bool IsBeyond(double value, int column) => Math.Abs(value) * _scales[column] > RecordingBounds.MostValue;

    // The first filled cell of a column that was empty so far says what the column is: a late remark makes it text.
    private void TakeWord(ReadOnlySpan<char> text, int column, long row, long line)
    {
        ColumnPlan plan = _plans[column];
        bool isText = plan.IsEmptyAtFirst && !_tallies[column].HasNumbers;
        if (!isText && plan.Role != ColumnRole.Marker)
        {
            throw TextErrors.Word(_file, line, plan.RawLabel, text.Trim().ToString());
        }

        if (isText)
        {
            _plans[column] = plan with { Role = ColumnRole.Text, NotAudited = "text, not numbers" };
        }

        _numbers[_spoolColumns[column]] = double.NaN;
        _tallies[column].Gap(row, line);
    }
}
