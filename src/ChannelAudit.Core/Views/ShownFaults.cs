using System.Collections.Immutable;

namespace ChannelAudit.Views;

/// <summary>What the whole of a channel says of a stretch that is looked at: its rails, and where exactly samples are at fault.</summary>
/// <param name="LowerRail">The lower rail in the unit of the channel, or null when none is known.</param>
/// <param name="UpperRail">The upper rail, or null when none is known.</param>
/// <param name="Marks">Samples at a rail, flat or missing.</param>
public sealed record ShownFaults(double? LowerRail, double? UpperRail, ImmutableArray<FaultMark> Marks);
