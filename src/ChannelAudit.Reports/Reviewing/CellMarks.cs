using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>Where the findings of a cell are on its trace: the very samples where they are known, else the stretch that the finding is about.</summary>
internal static class CellMarks
{
    /// <summary>The marks of a cell.</summary>
    /// <param name="recording">Its recording.</param>
    /// <param name="channel">Its channel.</param>
    /// <param name="cell">The cell.</param>
    /// <param name="faults">Samples of the channel at a rail, flat or missing.</param>
    public static ImmutableArray<CellMarking> Of(RecordingResult recording, ChannelResult channel, CellResult cell, ImmutableArray<FaultMark> faults) =>
    [
        .. cell.Reasons
            .SelectMany(reason => EvidenceRow.Of(recording, channel, reason).Where(row => row.Cell?.Trial == cell.Trial))
            .SelectMany(row => row.Findings)
            .Where(finding => finding.Grade > Grade.Pass && !ReasonPhrase.IsShareOfTrials(finding))
            .SelectMany(finding => Of(finding, faults)),
    ];

    private static IEnumerable<CellMarking> Of(Finding finding, ImmutableArray<FaultMark> faults)
    {
        string letter = ReasonLetters.For(finding.Reason);
        FaultMark[] exact =
        [
            .. faults.Where(fault => string.Equals(fault.Reason, finding.Reason, StringComparison.Ordinal) && fault.FromS < finding.ToS && fault.ToS > finding.FromS),
        ];
        return exact.Length == 0
            ? [new CellMarking(finding.FromS, finding.ToS, letter, finding.Grade)]
            : exact.Select(fault => new CellMarking(
                Math.Max(fault.FromS, finding.FromS), Math.Min(fault.ToS, finding.ToS), letter, finding.Grade, IsExact: true));
    }
}
