using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Pages;

/// <summary>What a reason rests on: in one trial, or over the recording.</summary>
/// <param name="Cell">The trial; null for what holds over the recording or a stretch of it.</param>
/// <param name="Findings">What was found, worst first; empty when nothing could be judged.</param>
internal sealed record EvidenceRow(CellResult? Cell, ImmutableArray<Finding> Findings)
{
    /// <summary>Whether the trial has nothing of its own and carries what its channel has.</summary>
    public bool IsCarried => Cell is not null && Findings.Any(finding => finding.Trial is null);

    /// <summary>The rows of a channel for a reason: what holds over the recording, then its trials.</summary>
    public static ImmutableArray<EvidenceRow> Of(RecordingResult recording, ChannelResult channel, string reason)
    {
        Dictionary<int, (double FromS, double ToS)> windows = [];
        foreach (Trial trial in recording.Trials)
        {
            windows[trial.Number] = ((double)trial.WindowFromS, (double)trial.WindowToS);
        }

        Finding[] whole = [.. Having(channel.Findings, reason)];
        return
        [
            .. whole.Select(finding => new EvidenceRow(null, [finding])),
            .. channel.Cells.Where(cell => cell.Reasons.Contains(reason, StringComparer.Ordinal))
                .Select(cell => new EvidenceRow(cell, OfCell(cell, reason, whole, windows))),
        ];
    }

    private static ImmutableArray<Finding> OfCell(CellResult cell, string reason, Finding[] whole, Dictionary<int, (double FromS, double ToS)> windows)
    {
        ImmutableArray<Finding> own = [.. Having(cell.Findings, reason)];
        if (!own.IsEmpty)
        {
            return own;
        }

        // A trial carries what its channel has over a stretch that meets its window; how many trials are bad never flows back.
        Finding[] carried = [.. whole.Where(finding => !ReasonPhrase.IsShareOfTrials(finding))];
        if (!windows.TryGetValue(cell.Trial, out (double FromS, double ToS) window))
        {
            return [.. carried];
        }

        Finding[] met = [.. carried.Where(finding => finding.FromS < window.ToS && finding.ToS > window.FromS)];
        return met.Length > 0 ? [.. met] : [.. carried];
    }

    private static IEnumerable<Finding> Having(IEnumerable<Finding> findings, string reason) =>
        findings.Where(finding => string.Equals(finding.Reason, reason, StringComparison.Ordinal)).OrderByDescending(finding => finding.Grade);
}
