using System.Globalization;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Console;

/// <summary>How far a run has come, in one line of a terminal.</summary>
public static class ProgressText
{
    /// <summary><c>57 of 200, about 3 min left: day1/P07.edf</c>, cut or padded to a width.</summary>
    /// <param name="done">Recordings done.</param>
    /// <param name="total">Recordings in all.</param>
    /// <param name="left">The time left; null when it cannot be told.</param>
    /// <param name="name">The recording that is worked on, as its path stands in the file system.</param>
    /// <param name="columns">The width.</param>
    public static string Of(int done, int total, TimeSpan? left, string name, int columns)
    {
        string time = left is { } span ? $", about {Amount(span)} left" : string.Empty;
        return TerminalText.Fit(TerminalText.Clean($"{done.Plain()} of {total.Plain()}{time}: {name}"), columns);
    }

    private static string Amount(TimeSpan left) => left.TotalSeconds switch
    {
        < 90 => string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(left.TotalSeconds)} s"),
        < 5400 => string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(left.TotalMinutes)} min"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{left.TotalHours:0.0} h"),
    };
}
