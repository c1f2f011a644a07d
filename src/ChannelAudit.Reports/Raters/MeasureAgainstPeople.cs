using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Reports.Raters;

/// <summary>A single measure against people's rejects, at every limit it could have.</summary>
public sealed record MeasureAgainstPeople
{
    /// <summary>The measure.</summary>
    public required MeasureDefinition Measure { get; init; }

    /// <summary>From a limit that calls nothing to one that calls everything, limits in the measure's unit; null calls nothing.</summary>
    public required ImmutableArray<(double? Limit, DetectionCounts Counts)> Points { get; init; }

    /// <summary>Area under the curve, 0 to 1; 0.5 tells nothing.</summary>
    public required double Area { get; init; }

    /// <summary>Labelled things without a value, which are in no other number here.</summary>
    public required int LeftOut { get; init; }

    /// <summary>Its own reject limit in force, or null.</summary>
    public double? LimitInForce { get; init; }

    /// <summary>What that limit alone calls; null without one.</summary>
    public DetectionCounts? AtLimitInForce { get; init; }

    /// <summary>Whether there are labels enough of both kinds to name a limit.</summary>
    public bool HasEnough => Labels.Reject >= RatedSet.LeastLabels && Labels.Other >= RatedSet.LeastLabels;

    /// <summary>The limit with the largest sensitivity + specificity; null when too few labels are there to say, or none is better than calling nothing.</summary>
    public (double Limit, DetectionCounts Counts)? Best { get; init; }

    /// <summary>Things with a value that people reject, and others.</summary>
    public (int Reject, int Other) Labels => (Points[0].Counts.Positives, Points[0].Counts.Negatives);
}
