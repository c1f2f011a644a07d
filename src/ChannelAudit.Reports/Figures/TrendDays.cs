using System.Globalization;

namespace ChannelAudit.Reports.Figures;

/// <summary>Ticks of an axis of days: years, quarters or months, whatever has room.</summary>
internal static class TrendDays
{
    private const int MostTicks = 14;

    private static readonly int[] Steps = [1, 3, 6, 12];

    /// <summary>Months that begin in a stretch of days, as <c>2025-04</c>.</summary>
    public static IEnumerable<(DateOnly Day, string Text)> Ticks(DateOnly from, DateOnly to)
    {
        int months = ((to.Year - from.Year) * 12) + to.Month - from.Month + 1;
        int step = Steps.FirstOrDefault(one => months / one <= MostTicks, 24);
        DateOnly first = new(from.Year, 1, 1);
        for (DateOnly day = first; day <= to; day = day.AddMonths(step))
        {
            if (day >= from)
            {
                yield return (day, day.ToString("yyyy-MM", CultureInfo.InvariantCulture));
            }
        }
    }
}
