namespace ChannelAudit.Reports.Reviewing;

/// <summary>A trial of the ribbon.</summary>
/// <param name="Number">The number of the cell, from 1.</param>
/// <param name="Trial">The trial's number.</param>
/// <param name="FromS">Start of its window in seconds.</param>
/// <param name="ToS">End of its window in seconds.</param>
/// <param name="Final">The verdict after decisions.</param>
/// <param name="IsDecided">Whether somebody decided.</param>
public sealed record RibbonCell(int Number, int Trial, double FromS, double ToS, string Final, bool IsDecided);
