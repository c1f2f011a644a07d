using System.Globalization;
using System.Text;
using ChannelAudit.Calibration.Running;

namespace ChannelAudit.Calibration.Report;

/// <summary>The counts behind every curve as a tab-separated table.</summary>
internal static class CurvesTable
{
    private const string Header =
        "generator\tfault\tseverity\trecordings\tfaulty\tfound\trejected\tother\tother_questionable\tother_rejected\tfalse_reasons\n";

    /// <summary>The table; LF, dot decimals, n/a for nothing.</summary>
    public static string Of(IEnumerable<MeasuredPoint> points)
    {
        StringBuilder text = new(Header);
        foreach (MeasuredPoint point in points)
        {
            text.Append(Row(point));
        }

        return text.ToString();
    }

    /// <summary>One row with its line end.</summary>
    public static string Row(MeasuredPoint point)
    {
        PointCount count = point.Count;
        string reasons = count.FalseReasons.IsEmpty
            ? "n/a"
            : string.Join(';', count.FalseReasons.Select(one => FormattableString.Invariant($"{one.Key}={one.Value}")));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{point.Generator}\t{point.Point.Sweep.Name}\t{point.Point.Severity}\t{count.Recordings}\t{count.Faulty}\t{count.Found}\t{count.Rejected}\t{count.Other}\t{count.OtherQuestionable}\t{count.OtherRejected}\t{reasons}\n");
    }
}
