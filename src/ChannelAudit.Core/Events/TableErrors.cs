using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Text;

namespace ChannelAudit.Events;

/// <summary>Every message about an events table or another small table that cannot be read.</summary>
internal static class TableErrors
{
    private const string Shape = "an events table has a header line with onset, duration and trial_type, tabs between columns, and times in seconds";

    /// <summary>The file cannot be opened.</summary>
    public static ChannelAuditException Unreadable(string file, Exception inner)
    {
        string cause = inner switch
        {
            FileNotFoundException or DirectoryNotFoundException => "it does not exist",
            UnauthorizedAccessException => "access is denied, or it is a folder",
            _ => "the system reports an input or output fault",
        };
        return new ChannelAuditException(FaultKind.Usage, $"{file}: cannot be read: {cause}", "check the name of the events table and that you may read it", inner);
    }

    /// <summary>The file is no text.</summary>
    public static ChannelAuditException Binary(string file) => Fault($"{file}: not an events table: the bytes are no text", Shape);

    /// <summary>The file has no content.</summary>
    public static ChannelAuditException Empty(string file) => Fault($"{file}: not an events table: the file is empty", Shape);

    /// <summary>A table that cannot be meant.</summary>
    public static ChannelAuditException TooLarge(string file) => Fault($"{file}: not an events table: larger than 256 MiB", Shape);

    /// <summary>A quote that is never closed.</summary>
    public static ChannelAuditException OpenQuote(string file, Exception inner) =>
        new(FaultKind.Usage, $"{file}: a quote is opened and never closed", "remove the single quote sign, or double it inside a quoted cell", inner);

    /// <summary>A row with too many or too few cells.</summary>
    public static ChannelAuditException Ragged(string file, int line, int expected, int found) =>
        Fault(
            $"{file}, line {Text(line)}: expected {Text(expected)} {(expected == 1 ? "column" : "columns")}, found {Text(found)}",
            "give every row one cell a column, n/a for what is missing, and put cells that hold the separator in double quotes");

    /// <summary>No onset column.</summary>
    public static ChannelAuditException NoOnset(string file, ImmutableArray<string> columns)
    {
        string? near = NearestName.Of("onset", columns);
        string found = near is null ? $"the columns are {OneLine.List(columns)}" : $"did you mean \"onset\" by \"{OneLine.Of(near)}\"?";
        return Fault($"{file}, header: no column \"onset\"; {found}", Shape);
    }

    /// <summary>The same needed column twice.</summary>
    public static ChannelAuditException Twice(string file, string column) =>
        Fault($"{file}, header: the column \"{OneLine.Of(column)}\" is there twice", "keep one of them, or rename the other");

    /// <summary>A word where a time belongs.</summary>
    public static ChannelAuditException NotATime(string file, int line, string column, string text) =>
        Fault(
            $"{file}, line {Text(line)}, column \"{OneLine.Of(column)}\": \"{OneLine.Of(text)}\" is not a time in seconds",
            "write seconds with a decimal dot, such as 12.5, or n/a");

    /// <summary>A time beyond any recording.</summary>
    public static ChannelAuditException OutOfRange(string file, int line, string column, string text) =>
        Fault($"{file}, line {Text(line)}, column \"{OneLine.Of(column)}\": {OneLine.Of(text)} s is out of range", "write seconds from the first sample; sample numbers and dates do not fit");

    /// <summary>A duration below zero.</summary>
    public static ChannelAuditException NegativeDuration(string file, string place, decimal durationS) =>
        Fault(
            $"{file}, {place}: the duration {durationS.ToString(CultureInfo.InvariantCulture)} is negative",
            "write 0 for an instant and n/a for a duration that is not known");

    private static ChannelAuditException Fault(string message, string hint) => new(FaultKind.Usage, message, hint);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
