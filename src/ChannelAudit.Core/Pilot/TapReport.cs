using System.Collections.Immutable;

namespace ChannelAudit.Pilot;

/// <summary>What taps on lead wires showed.</summary>
/// <param name="Pairs">One entry a pair of sites of which at least one was tapped.</param>
/// <param name="NotSeen">Sites whose taps left no trace, so that nothing can be said from them.</param>
public sealed record TapReport(ImmutableArray<TappedPair> Pairs, ImmutableArray<string> NotSeen);
