using ChannelAudit.Results;

namespace ChannelAudit.Reports.Tables;

/// <summary><c>pairs.tsv</c>: one row a pair of channels and trial, then <c>all</c>, <c>rest</c>, <c>active_a</c>, <c>active_b</c>.</summary>
public static class PairsTsv
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
        using TsvWriter table = new(TableColumns.Pairs, TsvWriter.BytesAPart, stream.Write);
        AddRows(table, recording, id: null);
        table.Flush();
    }

    /// <summary>The rows of a recording.</summary>
    /// <param name="table">Takes them.</param>
    /// <param name="recording">The recording.</param>
    /// <param name="id">What stands in front of every row of a table over several recordings; null for nothing.</param>
    internal static void AddRows(ITableWriter table, RecordingResult recording, string? id)
    {
        foreach (PairResult pair in recording.Pairs)
        {
            foreach (PairRow row in pair.Rows)
            {
                if (id is not null)
                {
                    table.Label(id);
                }

                table.Label(pair.ChannelA);
                table.Label(pair.ChannelB);
                table.Word(row.Trial);
                table.Number(row.Rho);
                table.Number(row.RhoHigh);
                table.Number(row.Distance);
                table.Number(row.Coherence);
                table.Number(row.GainAb);
                table.Number(row.GainBa);
                table.EndRow();
            }
        }
    }
}
