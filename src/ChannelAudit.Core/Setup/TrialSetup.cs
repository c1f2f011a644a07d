using System.Collections.Immutable;

namespace ChannelAudit.Setup;

/// <summary>Where trials come from and which part of them is scored.</summary>
public sealed record TrialSetup
{
    /// <summary>Where trials come from; null: the first of events table, annotations and blocks that has any.</summary>
    public TrialSource? From { get; init; }

    /// <summary>How a trigger channel is read.</summary>
    public TriggerSetup Trigger { get; init; } = new();

    /// <summary>Labels that mean rest.</summary>
    public ImmutableArray<string> Rest { get; init; } = [];

    /// <summary>Start of the scoring window after onset in s; null: the onset.</summary>
    public decimal? WindowFromS { get; init; }

    /// <summary>End of the scoring window after onset in s; null: the end of the event.</summary>
    public decimal? WindowToS { get; init; }

    /// <summary>Length of the baseline before onset in s; null: none.</summary>
    public decimal? BaselineS { get; init; }

    /// <summary>Usable trials a condition needs.</summary>
    public int Minimum { get; init; } = 8;
}
