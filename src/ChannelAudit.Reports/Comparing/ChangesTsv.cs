using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Reports.Tables;

namespace ChannelAudit.Reports.Comparing;

/// <summary>The table of <c>compare --out</c>: one row a changed channel (trial <c>all</c>) or trial.</summary>
public static class ChangesTsv
{
    /// <summary>The columns in order.</summary>
    public static ImmutableArray<string> Columns { get; } =
    [
        "recording", "label", "channel", "trial", "condition", "onset", "verdict_a", "verdict_b", "reasons_gone", "reasons_new",
        "not_assessed_gone", "not_assessed_new", "measure", "unit", "value_a", "value_b", "limit_a", "limit_b",
    ];

    /// <summary>The header line as UTF-8 bytes.</summary>
    public static byte[] Header() => Encoding.UTF8.GetBytes(string.Join('\t', Columns) + "\n");

    /// <summary>Rows without the header line, as UTF-8 bytes: so that a table of any length is written piece by piece.</summary>
    public static byte[] Rows(ImmutableArray<VerdictChange> changes)
    {
        using TsvWriter table = new(Columns);
        foreach (VerdictChange change in changes)
        {
            WriteRow(table, change);
        }

        return table.ToArray()[Header().Length..];
    }

    private static void WriteRow(TsvWriter table, VerdictChange change)
    {
        table.Label(change.Recording);
        table.Label(change.Label);
        table.Label(change.Channel);
        if (change.Trial is { } trial)
        {
            table.Count(trial);
        }
        else
        {
            table.Word("all");
        }

        table.Label(change.Condition);
        table.Number(change.OnsetS);
        table.Grade(change.VerdictA);
        table.Grade(change.VerdictB);
        table.Codes(change.ReasonsGone);
        table.Codes(change.ReasonsNew);
        table.Codes(change.NotAssessedGone);
        table.Codes(change.NotAssessedNew);
        table.Label(change.Measure?.Measure);
        table.Label(change.Measure?.Unit);
        table.Number(change.Measure?.ValueA);
        table.Number(change.Measure?.ValueB);
        table.Number(change.Measure?.LimitA);
        table.Number(change.Measure?.LimitB);
        table.EndRow();
    }
}
