using System.Collections.Immutable;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Tables;

/// <summary><c>conditions.tsv</c>: usable trials of every recording, channel and condition.</summary>
public static class ConditionsTsv
{
    /// <summary>The table as UTF-8 bytes.</summary>
    public static byte[] Render(ImmutableArray<RecordingResult> recordings)
    {
        using TsvWriter table = new(TableColumns.Conditions);
        foreach (RecordingResult recording in recordings)
        {
            AddRows(table, recording);
        }

        return table.ToArray();
    }

    /// <summary>The rows of a recording.</summary>
    internal static void AddRows(TsvWriter table, RecordingResult recording)
    {
        foreach (ConditionCount count in ConditionCounts.Of(recording))
        {
            table.Label(recording.Id);
            table.Label(recording.Participant);
            table.Label(count.Channel);
            table.Label(count.Condition);
            table.Count(count.Trials);
            table.Count(count.Pass);
            table.Count(count.Questionable);
            table.Count(count.Reject);
            table.Count(count.Usable);
            table.Count(count.Minimum);
            table.Flag(count.Enough);
            table.Label(recording.Group);
            table.EndRow();
        }
    }
}
