using System.Globalization;

namespace ChannelAudit.Reports.Figures;

/// <summary>Numbers and times as figures write them: short, the same in every culture.</summary>
internal static class FigureNumbers
{
    private const double MinuteS = 60;
    private const double HourS = 3600;

    /// <summary>Two significant digits, or all digits before the dot when there are more.</summary>
    public static string Short(double value) => Math.Abs(value) switch
    {
        >= 10 => value.ToString("F0", CultureInfo.InvariantCulture),
        >= 1 => value.ToString("0.#", CultureInfo.InvariantCulture),
        _ => value.ToString("G2", CultureInfo.InvariantCulture),
    };

    /// <summary>A number with its unit; the tables' <c>uV</c> is µV, and a ratio has no unit.</summary>
    public static string WithUnit(double value, string unit) => unit switch
    {
        "1" or "" => Short(value),
        "ms" when Math.Abs(value) >= 1000 => $"{Short(value / 1000)} s",
        _ when unit.StartsWith("uV", StringComparison.Ordinal) => $"{Short(value)} \u00B5{unit[1..]}",
        _ => $"{Short(value)} {unit}",
    };

    /// <summary>A whole number.</summary>
    public static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>A time as <c>mm:ss</c>, from one hour on <c>h:mm:ss</c>, seconds rounded to nearest.</summary>
    public static string Clock(double seconds)
    {
        // A bound that no recording reaches keeps a senseless number of a file from overflowing.
        long whole = (long)Math.Round(Math.Min(Math.Abs(seconds), 1e12));
        string sign = seconds < 0 && whole > 0 ? "-" : string.Empty;
        long minutes = whole % (long)HourS / (long)MinuteS;
        return whole >= HourS
            ? string.Create(CultureInfo.InvariantCulture, $"{sign}{whole / (long)HourS}:{minutes:00}:{whole % (long)MinuteS:00}")
            : string.Create(CultureInfo.InvariantCulture, $"{sign}{minutes:00}:{whole % (long)MinuteS:00}");
    }

    /// <summary>A length of time: <c>2.5 s</c> below a minute, a clock above.</summary>
    public static string Length(double seconds) => seconds < MinuteS ? $"{Short(seconds)} s" : Clock(seconds);

    /// <summary>Things counted: <c>1 trial</c>, <c>2 trials</c>.</summary>
    public static string Count(int count, string one) => count == 1 ? $"1 {one}" : $"{Whole(count)} {one}s";
}
