using System.Collections.Immutable;

namespace ChannelAudit.Criteria;

/// <summary>Limits that must all be reached together.</summary>
/// <param name="Limits">In the order written.</param>
public sealed record LimitSet(ImmutableArray<Limit> Limits);
