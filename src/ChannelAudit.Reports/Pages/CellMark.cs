using ChannelAudit.Decisions;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Pages;

/// <summary>A channel during a trial as a small mark.</summary>
/// <param name="Class">The style: the word of the verdict.</param>
/// <param name="Shape">The shape of the verdict; a disc with a broken line for a pass with something not assessed.</param>
/// <param name="Words">What a screen reader hears behind the number of the trial: its label, the verdict, the reasons.</param>
/// <param name="Target">The place on the page that shows why; null for a pass with everything assessed.</param>
/// <param name="IsDecided">Whether a person decided about it.</param>
internal sealed record CellMark(string Class, string Shape, string Words, string? Target, bool IsDecided)
{
    /// <summary>The mark of a cell.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channel">Its channel, by its place in file order.</param>
    /// <param name="cell">The cell.</param>
    /// <param name="trial">Its trial; null when the recording does not list it.</param>
    public static CellMark Of(RecordingResult recording, int channel, CellResult cell, Trial? trial)
    {
        Grade verdict = FinalVerdict.OfTrial(recording, recording.Channels[channel], cell);
        StatedDecision? decision = FinalVerdict.DecisionOn(recording, recording.Channels[channel], cell);
        bool isOpen = verdict == Grade.Pass && !cell.NotAssessed.IsEmpty;
        string reasons = string.Join(", ", cell.Reasons.Select(reason => ReasonWords.Name(reason, cell.Verdict)));
        string why = reasons.Length > 0 ? $", {reasons}" : isOpen ? ", not everything assessed" : string.Empty;
        string who = decision is null ? string.Empty : $"; {DecisionWords.Of(decision.Decision, cell.Verdict)}";
        return new(
            VerdictWords.Code(verdict),
            isOpen ? VerdictWords.OpenPass : VerdictWords.Shape(verdict),
            $"{(trial?.Label is { } label ? $", {label}" : string.Empty)}: {VerdictWords.Code(verdict)}{who}{why}",
            TargetOf(channel, cell, verdict, isOpen) is { } target && (decision is null || !cell.Reasons.IsEmpty) ? target : decision is null ? null : DecisionSection.Anchor(decision.Decision),
            decision is not null);
    }

    private static string? TargetOf(int channel, CellResult cell, Grade verdict, bool isOpen) => (cell.Reasons.IsEmpty, isOpen, verdict) switch
    {
        (false, _, _) => Anchors.Cell(channel, cell.Trial),
        (_, true, _) => Anchors.Gaps(channel),
        (_, _, Grade.Pass) => null,
        _ => Anchors.Channel(channel),
    };
}
