using System.Collections.Immutable;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>How the channel of a cell stands as a whole.</summary>
/// <param name="Verdict">Its computed verdict.</param>
/// <param name="Final">Its verdict after decisions.</param>
/// <param name="IsDecided">Whether somebody decided about it as a whole.</param>
/// <param name="Reasons">Its reasons in words, worst first.</param>
public sealed record ChannelStandView(string Verdict, string Final, bool IsDecided, ImmutableArray<string> Reasons);
