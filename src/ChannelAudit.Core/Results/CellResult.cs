using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Results;

/// <summary>One channel during one trial.</summary>
public sealed record CellResult
{
    /// <summary>The trial's number.</summary>
    public required int Trial { get; init; }

    /// <summary>The computed verdict.</summary>
    public required Grade Verdict { get; init; }

    /// <summary>Reason codes, worst first.</summary>
    public required ImmutableArray<string> Reasons { get; init; }

    /// <summary>What could not be judged, worst first.</summary>
    public required ImmutableArray<NotAssessed> NotAssessed { get; init; }

    /// <summary>Measures of the scoring window.</summary>
    public required ImmutableArray<GradedMeasure> Measures { get; init; }

    /// <summary>Measures of the baseline, or empty when none was asked for.</summary>
    public ImmutableArray<GradedMeasure> BaselineMeasures { get; init; } = [];

    /// <summary>Findings in this trial; those carried from the channel are in the channel's list.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }
}
