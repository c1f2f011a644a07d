using System.Collections.Immutable;
using ChannelAudit.Segments;

namespace ChannelAudit.Synthesis;

/// <summary>One trial of a made recording and how active each muscle is during it.</summary>
public sealed record PlannedTrial
{
    /// <summary>Onset in seconds from the first sample.</summary>
    public required decimal OnsetS { get; init; }

    /// <summary>Duration in seconds.</summary>
    public required decimal DurationS { get; init; }

    /// <summary>The label that is written beside it: a condition, a task or a word for rest.</summary>
    public required string Label { get; init; }

    /// <summary>What the muscles were asked to do.</summary>
    public TrialRole Role { get; init; } = TrialRole.Scored;

    /// <summary>Muscles that are not at their resting level.</summary>
    public ImmutableArray<SiteActivity> Activity { get; init; } = [];

    /// <summary>End in seconds.</summary>
    public decimal EndS => OnsetS + DurationS;
}
