using System.Collections.Immutable;
using ChannelAudit.Calibration.Report;
using ChannelAudit.Calibration.Study;
using ChannelAudit.Criteria;

namespace ChannelAudit.Calibration.Running;

/// <summary>The study from its first recording to its last.</summary>
internal static class WholeStudy
{
    // Not every fault has a second maker: with three recordings to eight, a fifth of all judged ones are the second generator's.
    private const double SecondShare = 0.375;

    // Limits are looked at on fewer: each of these is audited once a factor.
    private const double ChoosingShare = 0.25;

    private static readonly ImmutableArray<double> Factors = [0.5, 0.75, 1, 1.5, 2];

    /// <summary>Runs it.</summary>
    /// <param name="sweeps">What is looked at.</param>
    /// <param name="recordings">Recordings a point of the first generator.</param>
    /// <param name="second">The second generator.</param>
    /// <param name="progress">Told after every recording.</param>
    public static StudyResult Run(ImmutableArray<Sweep> sweeps, int recordings, SecondGenerator second, Action progress)
    {
        ImmutableArray<StudyPoint> points = StudyRunner.PointsOf(sweeps);
        ImmutableArray<ImmutableArray<PointCount>> judged = StudyRunner.Run(points, SeedSet.Judging, recordings, [DefaultCriteria.All], progress);
        ImmutableArray<StudyPoint> others = StudyRunner.SecondPointsOf(sweeps);
        ImmutableArray<PointCount> judgedSecond = second.Run(others, SeedSet.Judging, Math.Max(1, (int)(recordings * SecondShare)), progress);

        ImmutableArray<StudyPoint> telling = [.. points.Where(point => point.Sweep.IsConfuser || point.Sweep.Gross.Contains(point.Position))];
        ImmutableArray<ImmutableArray<PointCount>> moved = StudyRunner.Run(
            telling, SeedSet.Choosing, Math.Max(1, (int)(recordings * ChoosingShare)), [.. Factors.Select(ScaledCriteria.By)], progress);
        return new StudyResult(
            [
                .. points.Select((point, i) => new MeasuredPoint(MeasuredPoint.First, point, judged[i][0])),
                .. others.Select((point, i) => new MeasuredPoint(MeasuredPoint.Second, point, judgedSecond[i])),
            ],
            Factors,
            [.. Factors.Select((_, factor) => telling.Select((point, i) => new MeasuredPoint(MeasuredPoint.First, point, moved[i][factor])).ToImmutableArray())]);
    }
}
