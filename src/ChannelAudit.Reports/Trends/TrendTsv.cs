using System.Collections.Immutable;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Trends;

namespace ChannelAudit.Reports.Trends;

/// <summary><c>trend.tsv</c>: every measure of everything that recordings are put together by, over all time and by week.</summary>
public static class TrendTsv
{
    /// <summary>The name of the file.</summary>
    public const string FileName = "trend.tsv";

    /// <summary>Its columns.</summary>
    public static ImmutableArray<string> Columns { get; } = ["by", "lab", "subject", "period", "measure", "unit", "sessions", "values", "value", "low", "high"];

    /// <summary>The table as UTF-8 bytes.</summary>
    public static byte[] Render(TrendReport report)
    {
        using TsvWriter table = new(Columns);
        foreach (TrendRow row in TrendRow.All(report))
        {
            table.Word(TrendWords.Code(row.Subject.By));
            table.Label(row.Subject.Lab);
            table.Label(row.Subject.Name);
            table.Word(row.Period);
            table.Word(row.Measure);
            table.Word(row.Unit);
            table.Count(row.Sessions);
            table.Count(row.Values);
            table.Number(row.Value);
            table.Number(row.Low);
            table.Number(row.High);
            table.EndRow();
        }

        return table.ToArray();
    }
}
