using System.Collections.Immutable;
using ChannelAudit.Calibration.Study;

namespace ChannelAudit.Calibration.Report;

/// <summary>Everything that the study measured.</summary>
/// <param name="Judged">All points on judging seeds: those of the first generator, then those of the second.</param>
/// <param name="Factors">By how much the limits were moved on choosing seeds.</param>
/// <param name="Moved">The same points, confusers and gross faults, under each factor in turn; first generator, choosing seeds.</param>
internal sealed record StudyResult(ImmutableArray<MeasuredPoint> Judged, ImmutableArray<double> Factors, ImmutableArray<ImmutableArray<MeasuredPoint>> Moved)
{
    /// <summary>The points of one fault.</summary>
    public MeasuredPoint[] Of(Sweep sweep) => [.. Judged.Where(point => ReferenceEquals(point.Point.Sweep, sweep))];
}
