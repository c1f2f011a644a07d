using System.Globalization;
using System.Text;
using ChannelAudit.Calibration.Running;
using ChannelAudit.Calibration.Study;
using ChannelAudit.Criteria;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Calibration.Report;

/// <summary>What moving all limits of a reason does: too strict calls clean things bad, too mild lets gross faults pass.</summary>
internal static class LimitTable
{
    /// <summary>The table in Markdown.</summary>
    public static string Of(StudyResult result)
    {
        StringBuilder text = new("| reason | |");
        foreach (double factor in result.Factors)
        {
            text.Append(CultureInfo.InvariantCulture, $" x {factor} |");
        }

        text.Append("\n|---|---|").Insert(text.Length, "---|", result.Factors.Length).Append('\n');
        foreach (string reason in DefaultCriteria.All.All.Select(criterion => criterion.Reason).Where(reason => FaultSweeps.All.Any(sweep => sweep.Reasons.Contains(reason, StringComparer.Ordinal))))
        {
            text.Append(CultureInfo.InvariantCulture, $"| `{reason}` | false findings in 1000 |{Cells(result, points => False(points, reason))}\n");
            text.Append(CultureInfo.InvariantCulture, $"| | gross ones missed, % |{Cells(result, points => Missed(points, reason))}\n");
        }

        return text.ToString();
    }

    private static string Cells(StudyResult result, Func<IEnumerable<MeasuredPoint>, string> read) =>
        string.Concat(result.Moved.Select(points => $" {read(points)} |"));

    private static string False(IEnumerable<MeasuredPoint> points, string reason)
    {
        PointCount sum = points.Where(point => point.Point.Sweep.IsConfuser).Select(point => point.Count).Aggregate(PointCount.Empty, PointCount.Add);
        return sum.Other == 0 ? "n/a" : string.Create(CultureInfo.InvariantCulture, $"{1000.0 * sum.FalseReasons.GetValueOrDefault(reason) / sum.Other:0.##}");
    }

    private static string Missed(IEnumerable<MeasuredPoint> points, string reason)
    {
        int missed = 0;
        int all = 0;
        foreach (MeasuredPoint point in points.Where(point => point.Point.Sweep.Reasons.Contains(reason, StringComparer.Ordinal) && TargetTable.IsGross(point, point.Point.Sweep)))
        {
            all += point.Count.Faulty;
            missed += point.Count.Faulty - (point.Point.Sweep.Wanted == Grade.Reject ? point.Count.Rejected : point.Count.Found);
        }

        return all == 0 ? "n/a" : string.Create(CultureInfo.InvariantCulture, $"{100.0 * missed / all:0.##}");
    }
}
