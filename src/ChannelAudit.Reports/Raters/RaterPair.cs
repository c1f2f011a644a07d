using ChannelAudit.Reports.Reconciling;

namespace ChannelAudit.Reports.Raters;

/// <summary>Two who judged the same things.</summary>
/// <param name="A">The first, <see cref="RatedSet.Criteria"/> for the computed verdicts.</param>
/// <param name="B">The second.</param>
/// <param name="Table">Their answers against each other, pass to reject, the first's down.</param>
public sealed record RaterPair(string A, string B, TwoWayTable Table);
