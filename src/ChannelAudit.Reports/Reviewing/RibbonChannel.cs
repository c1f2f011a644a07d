using System.Collections.Immutable;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>A channel of the ribbon.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Verdict">Its verdict after decisions.</param>
/// <param name="Cells">Its trials.</param>
public sealed record RibbonChannel(string Name, string Verdict, ImmutableArray<RibbonCell> Cells);
