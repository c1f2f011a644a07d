using System.Collections.Immutable;

namespace ChannelAudit.Views;

/// <summary>One trial enlarged.</summary>
/// <param name="Trial">The trial's number.</param>
/// <param name="Trace">The trial with a little of what is around it.</param>
/// <param name="WindowFromS">Start of its scoring window in seconds.</param>
/// <param name="WindowToS">End of its scoring window.</param>
/// <param name="Marks">Samples at a rail, flat or missing inside the trace.</param>
public sealed record Closeup(int Trial, Trace Trace, double WindowFromS, double WindowToS, ImmutableArray<FaultMark> Marks);
