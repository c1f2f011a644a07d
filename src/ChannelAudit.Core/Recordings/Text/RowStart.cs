namespace ChannelAudit.Recordings.Text;

/// <summary>From this row on rows follow each other without a gap.</summary>
/// <param name="Row">The row, from 0.</param>
/// <param name="Timeline">Its index on the time axis.</param>
internal readonly record struct RowStart(long Row, long Timeline);
