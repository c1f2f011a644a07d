namespace ChannelAudit.Reports.Reviewing;

/// <summary>What undo would take back.</summary>
/// <param name="Number">The number of the decision.</param>
/// <param name="Cell">The number of the cell that it was made on.</param>
/// <param name="Words">What it says.</param>
/// <param name="IsEarlier">Whether it was made before this review was started: a person shall be asked first.</param>
public sealed record UndoView(int Number, int Cell, string Words, bool IsEarlier);
