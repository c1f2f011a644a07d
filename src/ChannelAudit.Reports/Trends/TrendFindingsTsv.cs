using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Trends;

namespace ChannelAudit.Reports.Trends;

/// <summary><c>trend-findings.tsv</c>: what changed, one row a line of a story.</summary>
public static class TrendFindingsTsv
{
    /// <summary>The name of the file.</summary>
    public const string FileName = "trend-findings.tsv";

    /// <summary>Its columns.</summary>
    public static ImmutableArray<string> Columns { get; } =
    [
        "story", "part_of", "by", "lab", "subject", "same_as", "measure", "unit", "change", "direction", "from", "to", "before", "after", "sessions", "weeks", "p", "p_corrected", "lines",
        "correlation", "first_alarm", "beyond_now", "words",
    ];

    /// <summary>The table as UTF-8 bytes.</summary>
    public static byte[] Render(TrendReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        using TsvWriter table = new(Columns);
        for (int i = 0; i < report.Stories.Length; i++)
        {
            foreach (TrendFinding finding in report.Stories[i].Findings)
            {
                Write(table, report, i, finding);
            }
        }

        return table.ToArray();
    }

    private static void Write(TsvWriter table, TrendReport report, int story, TrendFinding finding)
    {
        table.Count(story + 1);
        table.Number(report.Stories[story].PartOf + 1);
        table.Word(TrendWords.Code(finding.Line.Subject.By));
        table.Label(finding.Line.Subject.Lab);
        table.Label(finding.Line.Subject.Name);
        table.Label(finding.Line.Same.IsEmpty ? null : string.Join("; ", finding.Line.Same.Select(same => $"{TrendWords.Code(same.By)} {same.Name}")));
        table.Word(finding.Measure.Code);
        table.Word(finding.Measure.Unit);
        table.Word(TrendWords.Code(finding.Kind));
        table.Word(finding.IsWorse switch { true => "worse", false => "better", null => "neither" });
        table.Word(Day(finding.From)!);
        table.Word(Day(finding.To) ?? Cells.Missing);
        table.Number(finding.Before);
        table.Number(finding.After);
        table.Count(finding.Line.Sessions);
        table.Count(finding.Line.Weeks);
        table.Number(finding.P);
        table.Number(finding.CorrectedP);
        table.Count(report.LookedAt);
        table.Number(finding.Correlation);
        table.Word(Day(finding.Chart.FirstAlarm) ?? Cells.Missing);
        table.Flag(finding.Chart.IsBeyondNow);
        table.Label(TrendWords.Sentence(report, report.Stories[story]));
        table.EndRow();
    }

    private static string? Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
