using System.Globalization;

namespace ChannelAudit.Recordings.Text;

/// <summary>Reads the cells of the time column as differences from the first one, and sees that time runs forward.</summary>
internal sealed class TimeCells(string file, ColumnPlan plan, TextDialect dialect)
{
    private const decimal SecondsPerDay = 86_400;

    private readonly NumberFormatInfo _format = Cell.Format(dialect.DecimalSign);
    private double _first;
    private decimal _firstClock;
    private decimal _dayShift;
    private double _previous = double.NaN;

    /// <summary>The most digits behind the decimal sign.</summary>
    public int Decimals { get; private set; }

    /// <summary>The first time, in the column's own unit (seconds for a clock).</summary>
    public double First => plan.IsClock ? (double)_firstClock : _first;

    /// <summary>The row at which a clock without a date passed midnight, or -1.</summary>
    public long MidnightLine { get; private set; } = -1;

    /// <summary>Reads one time.</summary>
    /// <returns>The time since the first row, in the column's own unit.</returns>
    /// <exception cref="ChannelAuditException">When there is no time, or it is not after the one before.</exception>
    public double Read(ReadOnlySpan<char> text, long line) => Forward(plan.IsClock ? ReadClock(text, line) : ReadNumber(text, line), line);

    /// <summary>Reads one time that is a number.</summary>
    /// <param name="value">The number.</param>
    /// <param name="decimals">Digits behind its decimal sign.</param>
    /// <param name="line">Its line.</param>
    /// <returns>The time since the first row, in the column's own unit.</returns>
    /// <exception cref="ChannelAuditException">When it is not after the one before.</exception>
    public double Read(double value, int decimals, long line) => Forward(SinceFirst(value, decimals), line);

    private double Forward(double time, long line)
    {
        if (time <= _previous)
        {
            string now = Shown(time);
            throw time < _previous
                ? TextErrors.Backwards(file, line, plan.RawLabel, Shown(_previous), now)
                : TextErrors.Repeated(file, line, plan.RawLabel, now);
        }

        _previous = time;
        return time;
    }

    private double ReadNumber(ReadOnlySpan<char> text, long line)
    {
        switch (Cell.Read(text, _format, out double value))
        {
            case CellKind.Number:
                break;
            case CellKind.Missing:
                throw TextErrors.NoTime(file, line, plan.RawLabel);
            default:
                throw TextErrors.BadTime(file, line, plan.RawLabel, text.Trim().ToString());
        }

        return SinceFirst(value, text.Length > Decimals ? Cell.Decimals(text, dialect.DecimalSign) : 0);
    }

    private double SinceFirst(double value, int decimals)
    {
        Decimals = Math.Max(Decimals, decimals);
        if (double.IsNaN(_previous))
        {
            _first = value;
        }

        return value - _first;
    }

    private double ReadClock(ReadOnlySpan<char> text, long line)
    {
        if (!ClockTime.TryParse(text, out decimal seconds, out int decimals))
        {
            throw Cell.Read(text, _format, out _) == CellKind.Missing
                ? TextErrors.NoTime(file, line, plan.RawLabel)
                : TextErrors.BadTime(file, line, plan.RawLabel, text.Trim().ToString());
        }

        Decimals = Math.Max(Decimals, decimals);
        if (double.IsNaN(_previous))
        {
            _firstClock = seconds;
        }

        decimal since = seconds - _firstClock + _dayShift;
        if (seconds < SecondsPerDay && (double)since < _previous - (double)(SecondsPerDay / 2))
        {
            MidnightLine = line;
            _dayShift += SecondsPerDay;
            since += SecondsPerDay;
        }

        return (double)since;
    }

    private string Shown(double sinceFirst)
    {
        double time = First + sinceFirst;
        return Decimals <= 15 ? Math.Round(time, Decimals).ToString("0.###############", CultureInfo.InvariantCulture) : time.ToString("R", CultureInfo.InvariantCulture);
    }
}
