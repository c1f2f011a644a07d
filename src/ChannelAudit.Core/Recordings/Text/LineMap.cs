namespace ChannelAudit.Recordings.Text;

/// <summary>The line on which a row starts: rows and lines run alike but for blank lines and line breaks inside quotes.</summary>
internal sealed class LineMap
{
    private readonly List<(long Row, long Offset)> _changes = [];

    /// <summary>Notes the line of a row; rows come in order.</summary>
    public void Add(long row, long line)
    {
        long offset = line - row;
        if (_changes.Count == 0 || _changes[^1].Offset != offset)
        {
            _changes.Add((row, offset));
        }
    }

    /// <summary>The line of a row that was noted.</summary>
    public long LineOf(long row)
    {
        int at = _changes.FindLastIndex(change => change.Row <= row);
        return row + _changes[at].Offset;
    }
}
