using System.Globalization;
using System.Text;
using ChannelAudit.Calibration.Running;
using ChannelAudit.Calibration.Study;

namespace ChannelAudit.Calibration.Report;

/// <summary>The part of the page on one fault: its curve and the numbers behind it.</summary>
internal static class FaultSection
{
    /// <summary>Markdown of all faults.</summary>
    public static string All(StudyResult result)
    {
        StringBuilder text = new();
        foreach (Sweep sweep in FaultSweeps.All)
        {
            Append(text, sweep, result.Of(sweep));
        }

        return text.ToString();
    }

    /// <summary>A share in percent with its interval.</summary>
    public static string Words(Share share) => share.Value is { } value
        ? string.Create(CultureInfo.InvariantCulture, $"{100 * value:0.#} ({100 * share.Low:0} to {100 * share.High:0})")
        : "n/a";

    private static void Append(StringBuilder text, Sweep sweep, MeasuredPoint[] points)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n### {sweep.Title}\n\n");
        text.Append(CultureInfo.InvariantCulture, $"Right reason: `{string.Join("`, `", sweep.Reasons)}`.\n\n");
        text.Append(CultureInfo.InvariantCulture, $"![{sweep.Title}: share found and share rejected by severity](calibration/{sweep.Name}.png)\n\n");
        text.Append(CultureInfo.InvariantCulture, $"| {sweep.Severity} | first: found % | rejected % | second: found % | rejected % |\n|---|---|---|---|---|\n");
        foreach (double severity in sweep.Severities.Concat(sweep.SecondSeverities).Distinct())
        {
            text.Append(CultureInfo.InvariantCulture, $"| {severity} | {Cells(points, MeasuredPoint.First, severity)} | {Cells(points, MeasuredPoint.Second, severity)} |\n");
        }
    }

    private static string Cells(MeasuredPoint[] points, string generator, double severity)
    {
        PointCount? count = Array.Find(points, point => string.Equals(point.Generator, generator, StringComparison.Ordinal) && point.Point.Severity.Equals(severity))?.Count;
        return count is null ? " | " : $"{Words(count.FoundShare)} | {Words(count.RejectedShare)}";
    }
}
