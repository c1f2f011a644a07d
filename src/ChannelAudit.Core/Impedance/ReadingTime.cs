using System.Globalization;

namespace ChannelAudit.Impedance;

/// <summary>When a reading was taken, as written down: local time, with or without a date.</summary>
/// <param name="At">Date and time; without a date, on the first day there is.</param>
/// <param name="HasDate">Whether a date was written.</param>
public readonly record struct ReadingTime(DateTime At, bool HasDate)
{
    private static readonly string[] Clocks = ["HH':'mm", "H':'mm", "HH':'mm':'ss", "H':'mm':'ss", "HH':'mm':'ss.FFFFFFF"];
    private static readonly string[] Dates = ["yyyy-MM-dd'T'", "yyyy-MM-dd' '"];

    /// <summary>The time of day: <c>10:05</c>.</summary>
    public string Clock => At.ToString("HH':'mm", CultureInfo.InvariantCulture);

    /// <summary>A moment that is so many minutes later.</summary>
    /// <param name="minutes">Whole minutes; 0 and more.</param>
    public ReadingTime Plus(int minutes) => this with { At = At.AddMinutes(minutes) };

    /// <summary>Minutes from this moment to another.</summary>
    /// <param name="later">A moment written in the same way, with or without a date.</param>
    public double MinutesTo(ReadingTime later) => (later.At - At).TotalMinutes;

    /// <summary>As ISO 8601 writes it: <c>2026-03-12T10:05</c>, or <c>10:05</c> without a date; seconds only when there are any.</summary>
    public override string ToString() => At.ToString(
        (HasDate ? "yyyy-MM-dd'T'" : string.Empty) + (At.TimeOfDay.Seconds == 0 && At.TimeOfDay.Milliseconds == 0 ? "HH':'mm" : "HH':'mm':'ss"),
        CultureInfo.InvariantCulture);

    /// <summary>Reads a time of day, or a date and a time of day (ISO 8601-1:2019, 5.3 and 5.4); a zone is dropped: a table has one clock.</summary>
    /// <param name="text">Such as <c>10:05</c>, <c>9:05:30</c>, <c>2026-03-12T10:05</c>, <c>2026-03-12 10:05:00+01:00</c>.</param>
    /// <param name="time">The time.</param>
    /// <returns>False when it is no time of day.</returns>
    public static bool TryParse(string text, out ReadingTime time)
    {
        string local = WithoutZone(text.Trim());
        if (DateTime.TryParseExact(local, Clocks, CultureInfo.InvariantCulture, DateTimeStyles.NoCurrentDateDefault, out DateTime clock))
        {
            time = new ReadingTime(clock, HasDate: false);
            return true;
        }

        string[] formats = [.. Dates.SelectMany(date => Clocks.Select(each => date + each))];
        bool isTime = DateTime.TryParseExact(local, formats, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTime moment);
        time = new ReadingTime(moment, HasDate: true);
        return isTime;
    }

    // A sign behind the first colon can only begin a zone; the dashes of a date stand before it.
    private static string WithoutZone(string text)
    {
        int colon = text.IndexOf(':', StringComparison.Ordinal);
        int zone = colon < 0 ? -1 : text.IndexOfAny(['+', '-', 'Z', 'z'], colon);
        return zone < 0 ? text : text[..zone].TrimEnd();
    }
}
