using System.Collections.Immutable;
using ChannelAudit.Measures;

namespace ChannelAudit.Survey;

/// <summary>What one span of time shows.</summary>
/// <param name="Windows">One reading a channel.</param>
/// <param name="Pairs">One reading a pair; null where there is none.</param>
public sealed record TrialReadings(ImmutableArray<WindowReading> Windows, ImmutableArray<PairReading?> Pairs);
