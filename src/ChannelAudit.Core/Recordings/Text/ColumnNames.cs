using System.Text;

namespace ChannelAudit.Recordings.Text;

/// <summary>The names by which columns that are no channels are known.</summary>
internal static class ColumnNames
{
    private static readonly HashSet<string> TimeNames = new(StringComparer.Ordinal)
    {
        "time", "times", "t", "timestamp", "time stamp", "timestamps", "elapsed", "elapsed time", "datetime", "date time", "clock", "clock time", "time of day",
        "s", "sec", "secs", "second", "seconds", "ms", "msec", "millis", "millisecond", "milliseconds", "us", "usec", "micros", "microseconds", "x time",
    };

    private static readonly HashSet<string> CounterNames = new(StringComparer.Ordinal)
    {
        "sample", "samples", "sample number", "sample no", "sample nr", "sample index", "index", "counter", "count", "n", "no", "nr", "row", "frame", "packet",
    };

    private static readonly HashSet<string> MarkerNames = new(StringComparer.Ordinal)
    {
        "marker", "markers", "mark", "event", "events", "trigger", "triggers", "trig", "label", "labels", "annotation", "annotations", "comment", "comments",
        "stim", "stimulus", "condition", "phase", "status", "code", "codes", "ttl", "digital", "digital input", "digital in", "din", "sync", "button", "response",
        "trial", "block", "task", "note", "notes", "flag",
    };

    /// <summary>Whether the label names a time.</summary>
    public static bool IsTime(string name) => TimeNames.Contains(Plain(name));

    /// <summary>Whether the label names a counter of rows.</summary>
    public static bool IsCounter(string name) => CounterNames.Contains(Plain(name)) || name.Trim() is "#";

    /// <summary>Whether the label names a marker, trigger or event.</summary>
    public static bool IsMarker(string name) => MarkerNames.Contains(Plain(name).TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9', ' '));

    // Lower case, words set apart by one blank.
    private static string Plain(string name)
    {
        StringBuilder plain = new();
        foreach (char sign in name.Trim().ToLowerInvariant())
        {
            if (char.IsLetterOrDigit(sign))
            {
                plain.Append(sign);
            }
            else if (plain.Length > 0 && plain[^1] != ' ')
            {
                plain.Append(' ');
            }
        }

        return plain.ToString().TrimEnd();
    }
}
