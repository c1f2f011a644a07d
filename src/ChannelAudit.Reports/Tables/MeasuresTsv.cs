using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Tables;

/// <summary><c>measures.tsv</c>: one row a channel, trial and measure; trials by number, each followed by its baseline, then <c>all</c>.</summary>
public static class MeasuresTsv
{
    private const int BytesARow = 72;

    /// <summary>The table as UTF-8 bytes.</summary>
    public static byte[] Render(RecordingResult recording)
    {
        int rows = recording.Channels.Sum(channel =>
            channel.Measures.Length + channel.Cells.Sum(cell => cell.Measures.Length + cell.BaselineMeasures.Length));
        using TsvWriter table = new(TableColumns.Measures, Math.Max(4096, rows * BytesARow));
        foreach (ChannelResult channel in recording.Channels)
        {
            foreach (CellResult cell in channel.Cells)
            {
                WriteRows(table, channel, cell.Measures, cell.Trial, string.Empty);
                WriteRows(table, channel, cell.BaselineMeasures, cell.Trial, ":baseline");
            }

            WriteRows(table, channel, channel.Measures, trial: null, "all");
        }

        return table.ToArray();
    }

    private static void WriteRows(TsvWriter table, ChannelResult channel, ImmutableArray<GradedMeasure> measures, int? trial, string suffix)
    {
        foreach (GradedMeasure measure in measures)
        {
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
