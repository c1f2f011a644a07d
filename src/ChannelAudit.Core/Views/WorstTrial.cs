using ChannelAudit.Findings;
using ChannelAudit.Measures;
using ChannelAudit.Results;

namespace ChannelAudit.Views;

/// <summary>The trial that shows best what is wrong with a channel.</summary>
internal static class WorstTrial
{
    /// <summary>The cell of the worst verdict whose own finding is farthest beyond its limit; of a channel without any, the strongest one.</summary>
    /// <returns>Null when there is no trial.</returns>
    public static CellResult? Of(ChannelResult channel) => channel.Cells
        .OrderByDescending(cell => cell.Verdict)
        .ThenByDescending(cell => cell.Findings.Select(Excess).DefaultIfEmpty(0).Max())
        .ThenByDescending(cell => cell.Measures.ValueOf("emg_rms") ?? 0)
        .FirstOrDefault();

    /// <summary>The finding to look at inside a trial, or null.</summary>
    public static Finding? FindingOf(CellResult cell) =>
        cell.Findings.OrderByDescending(finding => finding.Grade).ThenByDescending(Excess).FirstOrDefault();

    private static double Excess(Finding finding) => finding.Evidence.Select(Excess).DefaultIfEmpty(0).Max();

    private static double Excess(Evidence evidence)
    {
        bool fallsBelow = MeasureCatalog.Contains(evidence.Measure) && MeasureCatalog.Get(evidence.Measure).Sense == LimitSense.AtMost;
        double ratio = fallsBelow ? evidence.Limit / evidence.Value : evidence.Value / evidence.Limit;
        return double.IsFinite(ratio) ? Math.Abs(ratio) : 0;
    }
}
