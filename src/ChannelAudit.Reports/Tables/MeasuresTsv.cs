using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Tables;

/// <summary><c>measures.tsv</c>: one row a channel, trial and measure; trials by number, each followed by its baseline, then <c>all</c>.</summary>
public static class MeasuresTsv
{
    /// <summary>The table as UTF-8 bytes.</summary>
    public static byte[] Render(RecordingResult recording)
    {
        using MemoryStream bytes = new();
        Write(recording, bytes);
        return bytes.ToArray();
    }

    /// <summary>Writes the table in UTF-8, part by part.</summary>
    public static void Write(RecordingResult recording, Stream stream)
    {
        using TsvWriter table = new(TableColumns.Measures, TsvWriter.BytesAPart, stream.Write);
        AddRows(table, recording, id: null);
        table.Flush();
    }

    /// <summary>The rows of a recording.</summary>
    /// <param name="table">Takes them.</param>
    /// <param name="recording">The recording.</param>
    /// <param name="id">What stands in front of every row of a table over several recordings; null for nothing.</param>
    internal static void AddRows(ITableWriter table, RecordingResult recording, string? id)
    {
        foreach (ChannelResult channel in recording.Channels)
        {
            foreach (CellResult cell in channel.Cells)
            {
                WriteRows(table, id, channel, cell.Measures, cell.Trial, string.Empty);
                WriteRows(table, id, channel, cell.BaselineMeasures, cell.Trial, ":baseline");
            }

            WriteRows(table, id, channel, channel.Measures, trial: null, "all");
        }
    }

    private static void WriteRows(ITableWriter table, string? id, ChannelResult channel, ImmutableArray<GradedMeasure> measures, int? trial, string suffix)
    {
        foreach (GradedMeasure measure in measures)
        {
            if (id is not null)
            {
                table.Label(id);
            }

            table.Label(channel.Name);
            if (trial is { } number)
            {
                table.Count(number, suffix);
            }
            else
            {
                table.Word(suffix);
            }

            table.Word(measure.Value.Measure);
            table.Number(measure.Value.Value);
            table.Word(MeasureCatalog.Get(measure.Value.Measure).Unit);
            table.Grade(measure.Grade);
            table.Number(measure.Questionable);
            table.Number(measure.Reject);
            table.Label(measure.Value.Note);
            table.EndRow();
        }
    }
}
