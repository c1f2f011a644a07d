using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Text;

/// <summary>What is learned about one column while its numbers pass: where they are, and their smallest step.</summary>
internal sealed class ColumnTally
{
    // Beyond this a double's own rounding is coarser than the text.
    private const int MostDecimals = 15;

    private readonly ImmutableArray<RowRun>.Builder _runs = ImmutableArray.CreateBuilder<RowRun>();
    private long _runStart = -1;
    private long _stored;
    private double _previous;
    private double _smallest = double.PositiveInfinity;
    private int _decimals;

    /// <summary>Rows without a number.</summary>
    public long Missing { get; private set; }

    /// <summary>The line of the first of them.</summary>
    public long FirstMissingLine { get; private set; }

    /// <summary>Whether any number was seen.</summary>
    public bool HasNumbers => _stored > 0 || _runStart >= 0;

    /// <summary>The smallest difference between two successive numbers that differ, else the last digit of the text; in the text's unit.</summary>
    public double Step
    {
        get
        {
            double digit = Math.Pow(10, -_decimals);
            if (double.IsInfinity(_smallest))
            {
                return digit;
            }

            return _decimals > MostDecimals ? _smallest : Math.Max(Math.Round(_smallest, _decimals), digit);
        }
    }

    /// <summary>Takes a number as it stands in the text.</summary>
    public void Number(long row, double value, ReadOnlySpan<char> text, char decimalSign) =>
        Number(row, value, text.Length > _decimals ? Cell.Decimals(text, decimalSign) : 0);

    /// <summary>Takes a number.</summary>
    /// <param name="row">Its row.</param>
    /// <param name="value">The number.</param>
    /// <param name="decimals">Digits behind the decimal sign.</param>
    public void Number(long row, double value, int decimals)
    {
        if (_runStart < 0)
        {
            _runStart = row;
        }
        else
        {
            double step = Math.Abs(value - _previous);
            if (step > 0 && step < _smallest)
            {
                _smallest = step;
            }
        }

        _previous = value;
        _decimals = Math.Max(_decimals, decimals);
    }

    /// <summary>Takes a row without a number.</summary>
    public void Gap(long row, long line)
    {
        FirstMissingLine = Missing == 0 ? line : FirstMissingLine;
        Missing++;
        EndRun(row);
    }

    /// <summary>Ends the count and gives the runs of rows with numbers.</summary>
    public ImmutableArray<RowRun> Finish(long rows)
    {
        EndRun(rows);
        return _runs.ToImmutable();
    }

    private void EndRun(long row)
    {
        if (_runStart < 0)
        {
            return;
        }

        long length = row - _runStart;
        _runs.Add(new RowRun(_runStart, length, _stored));
        _stored += length;
        _runStart = -1;
    }
}
