using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>What a person wants to decide on the page.</summary>
/// <param name="Number">The number of the cell that was shown, from 1.</param>
/// <param name="Reach">How far the decision reaches.</param>
/// <param name="Others">How many other trials the person was told of; 0 unless it reaches to those alike.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="Reason">Why.</param>
/// <param name="Seen">Lines of the ledger when the cell was shown.</param>
public sealed record ReviewRequest(int Number, ReviewReach Reach, int Others, Grade Verdict, string Reason, int Seen);
