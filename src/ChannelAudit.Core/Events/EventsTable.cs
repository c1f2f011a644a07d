using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Recordings;
using ChannelAudit.Text;

namespace ChannelAudit.Events;

/// <summary>Reads events tables: <c>onset</c>, <c>duration</c>, <c>trial_type</c>, with the <c>n/a</c> rule of the Brain Imaging Data Structure.</summary>
/// <remarks>
/// Source: BIDS specification, "Tabular files" and "Events". Onset and duration in seconds, dot decimals, exponents accepted; kept as decimals, so that 0.1 is 0.1.
/// The label is taken from the first of these columns that is there: <c>trial_type</c>, <c>label</c>, <c>event</c>, <c>event_type</c>, <c>condition</c>,
/// <c>name</c>, <c>stimulus</c>, <c>value</c>. Other columns are left alone.
/// </remarks>
public static class EventsTable
{
    private const decimal FurthestS = 1_000_000_000;

    private static readonly string[] LabelColumns = ["trial_type", "label", "event", "event_type", "condition", "name", "stimulus", "value"];

    /// <summary>Reads a table.</summary>
    /// <param name="path">The file: tabs between columns; commas or semicolons are accepted when the header has no tab.</param>
    /// <returns>The events in file order.</returns>
    /// <exception cref="ChannelAuditException">When it cannot be read; usage fault.</exception>
    public static ImmutableArray<RecordedEvent> Read(string path) => Read(path, out _);

    /// <summary>Reads a table and tells what was odd about it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="warnings">Rows without an onset, which are left out.</param>
    /// <returns>The events in file order.</returns>
    /// <exception cref="ChannelAuditException">When it cannot be read; usage fault.</exception>
    public static ImmutableArray<RecordedEvent> Read(string path, out ImmutableArray<Warning> warnings)
    {
        SmallTable table = SmallTable.Read(path, TableErrors.Kind);
        int onset = table.OnlyIndexOf("onset");
        if (onset < 0)
        {
            throw TableErrors.NoOnset(table.File, table.Columns);
        }

        int duration = table.OnlyIndexOf("duration");
        int label = LabelColumns.Select(table.OnlyIndexOf).FirstOrDefault(column => column >= 0, -1);
        ImmutableArray<RecordedEvent>.Builder events = ImmutableArray.CreateBuilder<RecordedEvent>(table.Rows.Length);
        ImmutableArray<Warning>.Builder odd = ImmutableArray.CreateBuilder<Warning>();
        foreach (SmallTableRow row in table.Rows)
        {
            if (Seconds(table, row, onset) is not { } at)
            {
                odd.Add(new Warning(table.File, Place(row), "an event without an onset is left out"));
                continue;
            }

            decimal? lasts = Seconds(table, row, duration);
            if (lasts < 0)
            {
                throw TableErrors.NegativeDuration(table.File, Place(row), lasts.Value);
            }

            events.Add(new RecordedEvent(at, lasts, SmallTable.Cell(row, label)));
        }

        warnings = odd.ToImmutable();
        return events.ToImmutable();
    }

    private static string Place(SmallTableRow row) => "line " + row.Line.ToString(CultureInfo.InvariantCulture);

    private static decimal? Seconds(SmallTable table, SmallTableRow row, int column)
    {
        if (SmallTable.Cell(row, column) is not { } text)
        {
            return null;
        }

        if (!double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double size) || !double.IsFinite(size))
        {
            throw TableErrors.NotATime(table.File, row.Line, table.Columns[column], text);
        }

        return Math.Abs(size) <= (double)FurthestS && decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out decimal seconds)
            ? seconds
            : throw TableErrors.OutOfRange(table.File, row.Line, table.Columns[column], text);
    }
}
