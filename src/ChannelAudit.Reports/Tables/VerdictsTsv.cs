using System.Collections.Immutable;
using ChannelAudit.Results;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Tables;

/// <summary><c>verdicts.tsv</c>: one row a recording, channel and trial.</summary>
public static class VerdictsTsv
{
    /// <summary>The table as UTF-8 bytes.</summary>
    public static byte[] Render(ImmutableArray<RecordingResult> recordings)
    {
        using TsvWriter table = new(TableColumns.Verdicts);
        foreach (RecordingResult recording in recordings)
        {
            AddRows(table, recording);
        }

        return table.ToArray();
    }

    /// <summary>The rows of a recording.</summary>
    internal static void AddRows(ITableWriter table, RecordingResult recording)
    {
        Dictionary<int, Trial> trials = recording.Trials.ToDictionary(trial => trial.Number);
        foreach (ChannelResult channel in recording.Channels)
        {
            foreach (CellResult cell in channel.Cells)
            {
                WriteRow(table, recording, channel, cell, trials[cell.Trial]);
            }
        }
    }

    private static void WriteRow(ITableWriter table, RecordingResult recording, ChannelResult channel, CellResult cell, Trial trial)
    {
        table.Label(recording.Id);
        table.Label(channel.Name);
        table.Count(cell.Trial);
        table.Label(trial.Label);
        table.Number((double)trial.OnsetS);
        table.Number((double)trial.DurationS);
        table.Grade(cell.Verdict);
        table.Codes(cell.Reasons);
        table.Codes(cell.NotAssessed.Select(missing => missing.Reason));
        table.Grade(FinalVerdict.OfTrial(recording, channel, cell));
        table.EndRow();
    }
}
