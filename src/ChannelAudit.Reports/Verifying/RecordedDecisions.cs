using ChannelAudit.Decisions;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Verifying;

/// <summary>The ledger of an audit: whether its chain holds, and goes as far as the audit says.</summary>
public static class RecordedDecisions
{
    private const string Name = "decisions";

    /// <summary>Checks it.</summary>
    public static AuditCheck Check(RecordedRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        Ledger ledger = run.Audit.Decisions;
        return run.LedgerFault is { } fault ? new AuditCheck(Name, CheckState.Differs, fault)
            : IsBehind(run) ? new AuditCheck(Name, CheckState.Differs, Behind(ledger.Lines.Length - run.Audit.Decided.Lines))
            : ledger.Lines.IsEmpty ? new AuditCheck(Name, CheckState.Ok, "none, and audit.json knows of none")
            : new AuditCheck(Name, CheckState.Ok, $"{Quantities.Many(ledger.Lines.Length, "line")} of the ledger, each chained to the one before; the last has SHA-256 {ledger.Mark.Head}");
    }

    /// <summary>Whether decisions were added since tables and pages were made, as it is while a review goes on.</summary>
    public static bool IsBehind(RecordedRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        return run.LedgerFault is null && run.Audit.Decisions.Mark != run.Audit.Decided;
    }

    /// <summary>Whether a file of the audit says the same whatever was decided.</summary>
    /// <param name="file">Its path below the folder.</param>
    public static bool DoNotTouch(string file)
    {
        ArgumentNullException.ThrowIfNull(file);
        return file.Split('/') is ["recordings", _, RecordingContent.ResultName or "measures.tsv" or "pairs.tsv"] or [ParquetTables.Measures or ParquetTables.Pairs];
    }

    private static string Behind(int lines) =>
        $"{Quantities.Many(lines, "line")} of the ledger came after tables and pages were made, which differ for that reason; channelaudit decide DIR brings them up to date, then verify again";
}
