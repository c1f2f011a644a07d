using System.Globalization;

namespace ChannelAudit.Recordings.Text;

/// <summary>Reads times of day and dates with a time, as ISO 8601 writes them and as instruments do.</summary>
/// <remarks>
/// Accepted: <c>hh:mm:ss</c>, <c>mm:ss.fff</c>, <c>hh:mm:ss.fff</c> (dot or comma, ISO 8601-1:2019, 5.3.1.4), <c>hh:mm:ss:fff</c>, each also behind a date and a
/// blank or <c>T</c>, and with <c>Z</c> or an offset, which is dropped: only differences count. Two parts need a fraction, else they could be hours and minutes.
/// </remarks>
internal static class ClockTime
{
    private const int SecondsPerDay = 86_400;

    private static readonly string[] DateFormats = ["yyyy-MM-dd", "yyyy/MM/dd", "yyyyMMdd", "dd.MM.yyyy", "MM/dd/yyyy", "dd/MM/yyyy", "dd-MM-yyyy"];

    /// <summary>Reads one time.</summary>
    /// <param name="text">The cell.</param>
    /// <param name="seconds">Seconds since midnight, or since year 1 when there is a date.</param>
    /// <param name="decimals">Digits of the fraction.</param>
    /// <returns>False when it is no time.</returns>
    public static bool TryParse(ReadOnlySpan<char> text, out decimal seconds, out int decimals)
    {
        seconds = 0;
        decimals = 0;
        text = text.Trim();
        if (text.IndexOf(':') < 0)
        {
            return false;
        }

        int blank = text.IndexOfAny(' ', 'T');
        long days = 0;
        if (blank > 0)
        {
            if (!DateOnly.TryParseExact(text[..blank], DateFormats, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date))
            {
                return false;
            }

            days = date.DayNumber;
            text = text[(blank + 1)..].Trim();
        }

        if (!TryTimeOfDay(WithoutZone(text), out seconds, out decimals))
        {
            return false;
        }

        seconds += (decimal)days * SecondsPerDay;
        return true;
    }

    private static ReadOnlySpan<char> WithoutZone(ReadOnlySpan<char> text)
    {
        if (text.EndsWith("Z", StringComparison.OrdinalIgnoreCase))
        {
            return text[..^1];
        }

        int sign = text.LastIndexOfAny('+', '-');
        return sign > 0 ? text[..sign] : text;
    }

    private static bool TryTimeOfDay(ReadOnlySpan<char> text, out decimal seconds, out int decimals)
    {
        seconds = 0;
        decimals = 0;
        Span<Range> parts = stackalloc Range[5];
        int count = text.Split(parts, ':');
        if (count is < 2 or > 4)
        {
            return false;
        }

        ReadOnlySpan<char> last = text[parts[count - 1]];
        if (count == 4)
        {
            return TryWithThirdColon(text, parts, out seconds, out decimals);
        }

        int point = last.IndexOfAny('.', ',');
        if (count == 2 && point < 0)
        {
            return false;
        }

        decimal part = 0;
        int digits = 0;
        if (point >= 0)
        {
            digits = last.Length - point - 1;
            if (!TryFraction(last[(point + 1)..], out part))
            {
                return false;
            }

            last = last[..point];
        }

        int hours = 0;
        return (count == 2 || TryWhole(text[parts[0]], 1_000, out hours)) && TryWhole(text[parts[count - 2]], count == 2 ? 6_000 : 60, out int minutes)
            && TryWhole(last, 61, out int whole) && Sum(hours, minutes, whole + part, digits, out seconds, out decimals);
    }

    // hh:mm:ss:fff
    private static bool TryWithThirdColon(ReadOnlySpan<char> text, ReadOnlySpan<Range> parts, out decimal seconds, out int decimals)
    {
        seconds = 0;
        decimals = 0;
        ReadOnlySpan<char> digits = text[parts[3]];
        return TryWhole(text[parts[0]], 1_000, out int hours) && TryWhole(text[parts[1]], 60, out int minutes)
            && TryWhole(text[parts[2]], 61, out int whole) && TryFraction(digits, out decimal fraction)
            && Sum(hours, minutes, whole + fraction, digits.Length, out seconds, out decimals);
    }

    private static bool Sum(int hours, int minutes, decimal secondsPart, int digits, out decimal seconds, out int decimals)
    {
        seconds = (hours * 3600) + (minutes * 60) + secondsPart;
        decimals = digits;
        return true;
    }

    private static bool TryWhole(ReadOnlySpan<char> text, int below, out int value) =>
        int.TryParse(text, NumberStyles.AllowLeadingWhite, CultureInfo.InvariantCulture, out value) && value < below;

    private static bool TryFraction(ReadOnlySpan<char> digits, out decimal fraction)
    {
        fraction = 0;
        if (digits.IsEmpty || digits.Length > 12 || !long.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out long value))
        {
            return false;
        }

        fraction = new decimal(value) / (decimal)Math.Pow(10, digits.Length);
        return true;
    }
}
