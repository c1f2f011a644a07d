namespace ChannelAudit.Reports.Reviewing;

/// <summary>A channel during a trial, by its places.</summary>
/// <param name="Recording">Place of the recording in <c>audit.json</c>.</param>
/// <param name="Channel">Place of the channel in file order.</param>
/// <param name="Cell">Place of the cell in the channel.</param>
public readonly record struct ReviewCell(int Recording, int Channel, int Cell);
