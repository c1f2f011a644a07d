using System.Globalization;

namespace ChannelAudit.Reports.Wording;

/// <summary>Numbers as people read them: three significant digits, no exponent; tables have their own rule.</summary>
public static class Quantities
{
    private const double SecondsAMinute = 60;
    private const double SecondsAnHour = 3600;

    /// <summary>A whole number, the same in every culture.</summary>
    public static string Plain(this int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>A number with three significant digits, or all digits before the dot when there are more; no trailing zeros.</summary>
    public static string Short(double value)
    {
        double size = Math.Abs(value);
        if (size is 0 or >= 1e9 or < 1e-6)
        {
            return (value + 0.0).ToString("G3", CultureInfo.InvariantCulture);
        }

        int decimals = Math.Max(0, 2 - (int)Math.Floor(Math.Log10(size)));
        string digits = value.ToString("F" + decimals.Plain(), CultureInfo.InvariantCulture);
        return decimals == 0 ? digits : digits.TrimEnd('0').TrimEnd('.');
    }

    /// <summary>A number with its unit: <c>14.2 µV</c>; a ratio has none, and times from one second on are in seconds.</summary>
    /// <param name="value">The number.</param>
    /// <param name="unit">The unit as tables print it.</param>
    public static string WithUnit(double value, string unit) =>
        string.Equals(unit, "1", StringComparison.Ordinal) ? Short(value)
        : string.Equals(unit, "ms", StringComparison.Ordinal) && Math.Abs(value) >= 1000 ? $"{Short(value / 1000)} s"
        : $"{Short(value)} {Unit(unit)}";

    /// <summary>The unit as people write it: the table's <c>uV</c> is µV.</summary>
    public static string Unit(string unit) => unit.StartsWith("uV", StringComparison.Ordinal) ? "\u00B5" + unit[1..] : unit;

    /// <summary>A time of the recording as <c>mm:ss</c>, from one hour on <c>h:mm:ss</c>; seconds are cut, not rounded.</summary>
    public static string Clock(double seconds)
    {
        // A hair is added so that 59.999999999 from a sum of fractions is the full minute it stands for.
        double whole = Math.Floor(Math.Abs(seconds) + 1e-6);
        int hours = (int)(whole / SecondsAnHour);
        int minutes = (int)(whole % SecondsAnHour / SecondsAMinute);
        int rest = (int)(whole % SecondsAMinute);
        string sign = seconds < 0 && whole > 0 ? "-" : string.Empty;
        return hours > 0
            ? string.Create(CultureInfo.InvariantCulture, $"{sign}{hours}:{minutes:00}:{rest:00}")
            : string.Create(CultureInfo.InvariantCulture, $"{sign}{minutes:00}:{rest:00}");
    }

    /// <summary>A time of the recording with decimals of a second: <c>02:35.5</c>; rounded to them. Without decimals as <see cref="Clock(double)"/>.</summary>
    public static string Clock(double seconds, int decimals)
    {
        if (decimals == 0)
        {
            return Clock(seconds);
        }

        // As a decimal number, so that 35.5 has no tail.
        decimal rounded = Math.Round((decimal)seconds, decimals, MidpointRounding.AwayFromZero);
        string sign = rounded < 0 ? "-" : string.Empty;
        decimal size = Math.Abs(rounded);
        string fraction = (size % 1).ToString("F" + decimals.Plain(), CultureInfo.InvariantCulture)[1..];
        return sign + Clock((double)Math.Floor(size)) + fraction;
    }

    /// <summary>A stretch of time: <c>01:05 to 01:08</c>; below ten seconds with its length, since the clock alone would hide it.</summary>
    public static string Stretch(double fromS, double toS)
    {
        const double shortS = 10;
        string clock = $"{Clock(fromS)} to {Clock(toS)}";
        return toS - fromS < shortS ? $"{clock} ({Short(toS - fromS)} s)" : clock;
    }

    /// <summary>A number of things in words: <c>1 trial</c>, <c>2 trials</c>.</summary>
    public static string Many(int count, string one) => count == 1 ? $"1 {one}" : $"{count.Plain()} {one}s";
}
