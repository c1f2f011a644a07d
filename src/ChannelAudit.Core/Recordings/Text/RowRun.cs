namespace ChannelAudit.Recordings.Text;

/// <summary>Consecutive rows in which a channel has a number.</summary>
/// <param name="Row">The first row, from 0.</param>
/// <param name="Length">Rows.</param>
/// <param name="StoredStart">Index of its first number among those of the channel.</param>
internal readonly record struct RowRun(long Row, long Length, long StoredStart)
{
    /// <summary>The row behind its last.</summary>
    public long RowEnd => Row + Length;

    /// <summary>Index behind its last number.</summary>
    public long StoredEnd => StoredStart + Length;
}
