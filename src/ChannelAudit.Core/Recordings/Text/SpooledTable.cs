using System.Collections.Immutable;

namespace ChannelAudit.Recordings.Text;

/// <summary>A table whose numbers have been spooled, and what was learned on the way.</summary>
internal sealed record SpooledTable
{
    /// <summary>The numbers; the time column, when there is one, in its own unit from 0.</summary>
    public required SampleSpool Spool { get; init; }

    /// <summary>The columns, those that turned out to be text corrected.</summary>
    public required ImmutableArray<ColumnPlan> Plans { get; init; }

    /// <summary>For each column of the file its column in the spool, or -1.</summary>
    public required ImmutableArray<int> SpoolColumns { get; init; }

    /// <summary>What was learned about each column of the file.</summary>
    public required ImmutableArray<ColumnTally> Tallies { get; init; }

    /// <summary>The line of each row.</summary>
    public required LineMap Lines { get; init; }

    /// <summary>The time column's reader, or null.</summary>
    public required TimeCells? Times { get; init; }

    /// <summary>The first blank line between rows, or 0.</summary>
    public required long BlankLine { get; init; }
}
