using ChannelAudit.Reports.Digests;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tables;

/// <summary><c>sensitivity.tsv</c>: how many trials and channels of a run would have which verdict by other limits.</summary>
public static class SensitivityTsv
{
    /// <summary>The name of the file.</summary>
    public const string FileName = "sensitivity.tsv";

    /// <summary>The table as UTF-8 bytes.</summary>
    /// <param name="tally">The run.</param>
    public static byte[] Render(SensitivityTally tally)
    {
        ArgumentNullException.ThrowIfNull(tally);
        using TsvWriter table = new(TableColumns.Sensitivity);
        foreach (MovedLimits row in tally.Rows)
        {
            table.Word(row.Reason);
            table.Number(row.Factor);
            AddCounts(table, row.Trials);
            AddCounts(table, row.Channels);
            table.EndRow();
        }

        return table.ToArray();
    }

    private static void AddCounts(TsvWriter table, GradeCounts counts)
    {
        table.Count(counts.Total);
        table.Count(counts.Pass);
        table.Count(counts.Questionable);
        table.Count(counts.Reject);
    }
}
