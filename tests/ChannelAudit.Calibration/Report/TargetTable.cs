using System.Globalization;
using System.Text;
using ChannelAudit.Calibration.Running;
using ChannelAudit.Calibration.Study;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Calibration.Report;

/// <summary>What was aimed at and what was reached, each generator by itself.</summary>
internal static class TargetTable
{
    private const double MostQuestionable = 0.01;
    private const double LeastFound = 0.99;

    /// <summary>The table in Markdown.</summary>
    public static string Of(StudyResult result)
    {
        StringBuilder text = new("| aimed at | first generator | second generator |\n|---|---|---|\n");
        Row(text, "no false reject among clean trial-channels and confusers", result, Clean, count => (count.OtherRejected, count.Other, count.OtherRejected == 0));
        Row(text, "at most 1 % of them questionable", result, Clean, count => (count.OtherQuestionable, count.Other, count.OtherQuestionable <= MostQuestionable * count.Other));
        Row(text, "at most 1 % rejected of the trial-channels that a fault does not meet", result, point => !point.Point.Sweep.IsConfuser, count => (count.OtherRejected, count.Other, count.OtherRejected <= MostQuestionable * count.Other));
        text.Append(CultureInfo.InvariantCulture, $"| 99 % of all gross faults rejected, or found where that is asked | {Together(result, MeasuredPoint.First)} | {Together(result, MeasuredPoint.Second)} |\n");
        foreach (Sweep sweep in FaultSweeps.All)
        {
            if (sweep.Gross.IsEmpty)
            {
                text.Append(CultureInfo.InvariantCulture, $"| `{sweep.Name}`: as far as physics allows | see the curve | see the curve |\n");
                continue;
            }

            string verb = sweep.Wanted == Grade.Reject ? "rejected" : "found";
            Row(text, $"99 % of gross `{sweep.Name}` {verb}", result, point => IsGross(point, sweep), count => Reached(sweep, count));
        }

        return text.ToString();
    }

    /// <summary>Whether a point is one of a fault's gross ones.</summary>
    public static bool IsGross(MeasuredPoint point, Sweep sweep) => ReferenceEquals(point.Point.Sweep, sweep)
        && (sweep.Gross.Contains(point.Point.Position) || (!sweep.SecondSeverities.IsEmpty && string.Equals(point.Generator, MeasuredPoint.Second, StringComparison.Ordinal)));

    private static bool Clean(MeasuredPoint point) => point.Point.Sweep.IsConfuser;

    private static (int Count, int Of, bool IsMet) Reached(Sweep sweep, PointCount count)
    {
        int reached = sweep.Wanted == Grade.Reject ? count.Rejected : count.Found;
        return (reached, count.Faulty, reached >= LeastFound * count.Faulty);
    }

    private static void Row(StringBuilder text, string aim, StudyResult result, Func<MeasuredPoint, bool> which, Func<PointCount, (int Count, int Of, bool IsMet)> read) =>
        text.Append(CultureInfo.InvariantCulture, $"| {aim} | {Cell(result, MeasuredPoint.First, which, read)} | {Cell(result, MeasuredPoint.Second, which, read)} |\n");

    private static string Together(StudyResult result, string generator)
    {
        int reached = 0;
        PointCount sum = PointCount.Empty;
        foreach (Sweep sweep in FaultSweeps.All)
        {
            PointCount one = result.Judged
                .Where(point => string.Equals(point.Generator, generator, StringComparison.Ordinal) && IsGross(point, sweep))
                .Select(point => point.Count).Aggregate(PointCount.Empty, PointCount.Add);
            reached += Reached(sweep, one).Count;
            sum += one;
        }

        return Words(reached, sum.Faulty, sum.Recordings, reached >= LeastFound * sum.Faulty);
    }

    private static string Cell(StudyResult result, string generator, Func<MeasuredPoint, bool> which, Func<PointCount, (int Count, int Of, bool IsMet)> read)
    {
        PointCount sum = result.Judged.Where(point => string.Equals(point.Generator, generator, StringComparison.Ordinal) && which(point)).Select(point => point.Count).Aggregate(PointCount.Empty, PointCount.Add);
        (int count, int of, bool isMet) = read(sum);
        return of == 0 ? "not made" : Words(count, of, sum.Recordings, isMet);
    }

    private static string Words(int count, int of, int recordings, bool isMet)
    {
        Share share = Share.Of(count, of, recordings);
        return string.Create(CultureInfo.InvariantCulture, $"{count} of {of} ({100.0 * count / of:0.##} %, {100 * share.Low:0.#} to {100 * share.High:0.#}), {(isMet ? "met" : "**not met**")}");
    }
}
