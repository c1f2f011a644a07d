using ChannelAudit.Text;

namespace ChannelAudit.Lists;

/// <summary>Reads the columns <c>recording</c>, <c>channel</c> and <c>trial</c> that every person's list has.</summary>
/// <remarks>An empty cell, <c>n/a</c>, <c>all</c> and <c>*</c> mean all. Rows of nothing but empty cells, as spreadsheets leave them, do not count.</remarks>
internal sealed class ListedPlaces
{
    private readonly SmallTable _table;
    private readonly int _recording;
    private readonly int _channel;
    private readonly int _trial;

    /// <summary>Finds the columns.</summary>
    /// <exception cref="ChannelAuditException">When one is missing or there twice.</exception>
    public ListedPlaces(SmallTable table, SmallTableKind kind)
    {
        _table = table;
        _recording = ListErrors.Needed(table, kind, "recording");
        _channel = ListErrors.Needed(table, kind, "channel");
        _trial = ListErrors.Needed(table, kind, "trial");
    }

    /// <summary>The rows that say something, each with what it is about.</summary>
    /// <exception cref="ChannelAuditException">When one names no recording.</exception>
    public IEnumerable<(SmallTableRow Row, ListedPlace Place)> Rows()
    {
        foreach (SmallTableRow row in _table.Rows.Where(row => row.Cells.Any(cell => cell.Length > 0)))
        {
            string recording = SmallTable.Cell(row, _recording) ?? throw ListErrors.NoRecording(_table.File, row.Line);
            yield return (row, new ListedPlace(row.Line, recording, OrAll(row, _channel), OrAll(row, _trial)));
        }
    }

    private static string? OrAll(SmallTableRow row, int column) =>
        SmallTable.Cell(row, column) is { } text && !text.Equals("all", StringComparison.OrdinalIgnoreCase) && text is not "*" ? text : null;
}
