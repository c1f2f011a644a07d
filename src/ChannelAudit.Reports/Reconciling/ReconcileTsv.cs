using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Reports.Tables;

namespace ChannelAudit.Reports.Reconciling;

/// <summary>The table of <c>reconcile --out</c>: one row a declared line and a computed reject that was kept.</summary>
public static class ReconcileTsv
{
    private const string All = "all";

    /// <summary>The columns in order.</summary>
    public static ImmutableArray<string> Columns { get; } =
    [
        "line", "recording", "channel", "trial", "condition", "answer", "declared", "declared_reason", "verdict", "final", "reasons", "not_assessed",
        "reason", "measure", "value", "unit", "limit", "trials", "trials_pass", "trials_questionable", "trials_reject", "note",
    ];

    /// <summary>The header line as UTF-8 bytes.</summary>
    public static byte[] Header() => Encoding.UTF8.GetBytes(string.Join('\t', Columns) + "\n");

    /// <summary>Rows without the header line, as UTF-8 bytes: so that a table of any length is written piece by piece.</summary>
    public static byte[] Rows(ImmutableArray<ReconciledRow> rows)
    {
        using TsvWriter table = new(Columns);
        foreach (ReconciledRow row in rows)
        {
            WriteRow(table, row);
        }

        return table.ToArray()[Header().Length..];
    }

    /// <summary>The word of an answer.</summary>
    public static string Code(ReconcileAnswer answer) => answer switch
    {
        ReconcileAnswer.Supported => "supported",
        ReconcileAnswer.Partly => "partly",
        ReconcileAnswer.NotSupported => "not-supported",
        ReconcileAnswer.RejectedButKept => "rejected-but-kept",
        _ => "no-match",
    };

    private static void WriteRow(TsvWriter table, ReconciledRow row)
    {
        table.Number(row.Line);
        table.Label(row.Recording);
        table.Label(row.Channel ?? All);
        table.Label(row.Trial ?? All);
        table.Label(row.Condition);
        table.Word(Code(row.Answer));
        table.Grade(row.Declared);
        table.Label(row.DeclaredReason);
        table.Grade(row.Verdict);
        table.Grade(row.Final);
        table.Codes(row.Reasons);
        table.Codes(row.NotAssessed);
        table.Label(row.EvidenceReason);
        table.Label(row.Evidence?.Measure);
        table.Number(row.Evidence?.Value);
        table.Label(row.Evidence?.Unit);
        table.Number(row.Evidence?.Limit);
        table.Count(row.Cells.Total);
        table.Count(row.Cells.Pass);
        table.Count(row.Cells.Questionable);
        table.Count(row.Cells.Reject);
        table.Label(row.Note);
        table.EndRow();
    }
}
