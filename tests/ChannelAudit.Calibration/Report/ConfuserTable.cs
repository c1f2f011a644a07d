using System.Globalization;
using System.Text;
using ChannelAudit.Calibration.Running;
using ChannelAudit.Calibration.Study;

namespace ChannelAudit.Calibration.Report;

/// <summary>What must pass, and what of it did not.</summary>
internal static class ConfuserTable
{
    /// <summary>The table in Markdown.</summary>
    public static string Of(StudyResult result)
    {
        StringBuilder text = new("| | severities | generator | trial-channels | questionable | rejected | named |\n|---|---|---|---|---|---|---|\n");
        foreach (Sweep sweep in Confusers.All)
        {
            foreach (IGrouping<string, MeasuredPoint> made in result.Of(sweep).GroupBy(point => point.Generator, StringComparer.Ordinal))
            {
                PointCount sum = made.Select(point => point.Count).Aggregate(PointCount.Empty, PointCount.Add);
                string severities = string.Join(", ", made.Select(point => point.Point.Severity.ToString(CultureInfo.InvariantCulture)).Distinct(StringComparer.Ordinal));
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"| {sweep.Title} | {severities} ({sweep.Severity}) | {made.Key} | {sum.Other} | {sum.OtherQuestionable} | {sum.OtherRejected} | {Named(sum)} |\n");
            }
        }

        return text.ToString();
    }

    private static string Named(PointCount count) => count.FalseReasons.IsEmpty
        ? "nothing"
        : string.Join(", ", count.FalseReasons.Select(one => string.Create(CultureInfo.InvariantCulture, $"`{one.Key}` {one.Value}")));
}
