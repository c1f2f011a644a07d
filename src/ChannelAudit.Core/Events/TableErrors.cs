using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Text;

namespace ChannelAudit.Events;

/// <summary>Every message about an events table beyond what holds for any small table.</summary>
internal static class TableErrors
{
    /// <summary>What such a table is.</summary>
    public static readonly SmallTableKind Kind = new(
        "an events table", "an events table has a header line with onset, duration and trial_type, tabs between columns, and times in seconds");

    /// <summary>No onset column.</summary>
    public static ChannelAuditException NoOnset(string file, ImmutableArray<string> columns)
    {
        string? near = NearestName.Of("onset", columns);
        string found = near is null ? $"the columns are {OneLine.List(columns)}" : $"did you mean \"onset\" by \"{OneLine.Of(near)}\"?";
        return Fault($"{file}, header: no column \"onset\"; {found}", Kind.Shape);
    }

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
