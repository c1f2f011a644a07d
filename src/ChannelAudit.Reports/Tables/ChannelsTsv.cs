using System.Collections.Immutable;
using ChannelAudit.Impedance;
using ChannelAudit.Measures;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tables;

/// <summary><c>channels.tsv</c>: one row a recording and channel, with every measure of the whole recording.</summary>
public static class ChannelsTsv
{
    /// <summary>The table as UTF-8 bytes.</summary>
    public static byte[] Render(ImmutableArray<RecordingResult> recordings)
    {
        using TsvWriter table = new(TableColumns.Channels);
        foreach (RecordingResult recording in recordings)
        {
            AddRows(table, recording);
        }

        return table.ToArray();
    }

    /// <summary>The rows of a recording.</summary>
    internal static void AddRows(TsvWriter table, RecordingResult recording)
    {
        foreach (ChannelResult channel in recording.Channels)
        {
            WriteRow(table, recording, channel);
        }
    }

    private static void WriteRow(TsvWriter table, RecordingResult recording, ChannelResult channel)
    {
        table.Label(recording.Id);
        table.Label(channel.Name);
        table.Grade(channel.Verdict);
        table.Codes(channel.Reasons);
        table.Codes(channel.NotAssessed.Select(missing => missing.Reason));
        table.Grade(FinalVerdict.OfChannel(recording, channel));
        table.Count(channel.Cells.Length);
        table.Count(channel.Count(Grade.Pass));
        table.Count(channel.Count(Grade.Questionable));
        table.Count(channel.Count(Grade.Reject));

        // Impedance has a column of its own and never changes a verdict.
        table.Word(recording.Impedance?.Site(channel.Name)?.Grade is { } impedance ? ImpedanceCodes.Of(impedance) : Cells.Missing);
        foreach (MeasureDefinition measure in MeasureCatalog.OfWholeRecordings)
        {
            table.Number(ValueOf(channel, measure.Name));
        }

        table.EndRow();
    }

    private static double? ValueOf(ChannelResult channel, string measure)
    {
        foreach (GradedMeasure graded in channel.Measures)
        {
            if (string.Equals(graded.Value.Measure, measure, StringComparison.Ordinal))
            {
                return graded.Value.Value;
            }
        }

        return null;
    }
}
