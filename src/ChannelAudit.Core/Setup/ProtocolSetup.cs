using System.Collections.Immutable;

namespace ChannelAudit.Setup;

/// <summary>What the session was to be: the <c>[protocol]</c> table. It changes no verdict.</summary>
public sealed record ProtocolSetup
{
    /// <summary>Trials of each condition, as listed; empty when nothing is said of them.</summary>
    public ImmutableArray<ExpectedTrials> Trials { get; init; } = [];

    /// <summary>Durations allowed for every trial; null: any.</summary>
    public TimeRange? DurationS { get; init; }

    /// <summary>Durations allowed by condition, where they differ.</summary>
    public ImmutableSortedDictionary<string, TimeRange> DurationsS { get; init; } = ImmutableSortedDictionary.Create<string, TimeRange>(StringComparer.Ordinal);

    /// <summary>The label of every trial in order; empty: any order.</summary>
    public ImmutableArray<string> Sequence { get; init; } = [];

    /// <summary>From one onset to the next; null: any.</summary>
    public TimeRange? GapS { get; init; }

    /// <summary>The durations allowed for a label, or null.</summary>
    public TimeRange? DurationOf(string? label) => label is not null && DurationsS.TryGetValue(label, out TimeRange own) ? own : DurationS;
}
