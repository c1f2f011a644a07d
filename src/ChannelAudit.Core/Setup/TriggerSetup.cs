using System.Collections.Immutable;

namespace ChannelAudit.Setup;

/// <summary>How a trigger channel is read: the <c>trigger_</c> keys of <c>[trials]</c>.</summary>
public sealed record TriggerSetup
{
    /// <summary>The channel's label in the recording; null: the first that looks like a trigger channel.</summary>
    public string? Channel { get; init; }

    /// <summary>Which change is an event.</summary>
    public TriggerEdge Edge { get; init; } = TriggerEdge.Rising;

    /// <summary>The bits that count; null: all of them.</summary>
    public int? Mask { get; init; }

    /// <summary>The label of each code that is an event, behind the mask; empty: every code, labelled by its number.</summary>
    public ImmutableSortedDictionary<long, string> Codes { get; init; } = ImmutableSortedDictionary<long, string>.Empty;

    /// <summary>An event that begins less than this after the one before is a double, in ms; null: none is.</summary>
    public decimal? LeastMs { get; init; }
}
