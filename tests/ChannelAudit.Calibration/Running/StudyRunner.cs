using System.Collections.Immutable;
using ChannelAudit.Calibration.Study;
using ChannelAudit.Criteria;

namespace ChannelAudit.Calibration.Running;

/// <summary>Runs points of the study on all cores; the counts do not depend on how many there are.</summary>
internal static class StudyRunner
{
    /// <summary>Counts for each point, and within it for each set of limits.</summary>
    /// <param name="points">The points.</param>
    /// <param name="set">Which seeds.</param>
    /// <param name="recordings">Recordings a point.</param>
    /// <param name="criteria">Limits, one after the other.</param>
    /// <param name="progress">Told after every recording.</param>
    public static ImmutableArray<ImmutableArray<PointCount>> Run(
        ImmutableArray<StudyPoint> points, SeedSet set, int recordings, ImmutableArray<AuditCriteria> criteria, Action progress)
    {
        ImmutableArray<PointCount>[] counts = new ImmutableArray<PointCount>[points.Length * recordings];

        // Without a bound the pool starts ever more threads on a busy machine, each with a whole recording in memory.
        Parallel.For(0, counts.Length, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            StudyPoint point = points[i / recordings];
            counts[i] = PlanAudit.Count(point.Sweep, point.Severity, point.SeedOf(set, i % recordings), criteria);
            progress();
        });
        return
        [
            .. Enumerable.Range(0, points.Length).Select(point => ImmutableArray.CreateRange(
                Enumerable.Range(0, criteria.Length).Select(limits =>
                    Enumerable.Range(point * recordings, recordings).Select(i => counts[i][limits]).Aggregate(PointCount.Empty, PointCount.Add)))),
        ];
    }

    /// <summary>All points of some sweeps.</summary>
    public static ImmutableArray<StudyPoint> PointsOf(IEnumerable<Sweep> sweeps) =>
        [.. sweeps.SelectMany(sweep => sweep.Severities.Select((severity, i) => new StudyPoint(sweep, i, severity)))];

    /// <summary>All points of some sweeps that the second generator can make.</summary>
    public static ImmutableArray<StudyPoint> SecondPointsOf(IEnumerable<Sweep> sweeps) =>
    [
        .. sweeps.Where(sweep => sweep.SecondName is not null).SelectMany(sweep =>
            (sweep.SecondSeverities.IsEmpty ? sweep.Severities : sweep.SecondSeverities).Select((severity, i) => new StudyPoint(sweep, i, severity))),
    ];
}
