using ChannelAudit.Decisions;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tables;

/// <summary>The verdict after decisions: the only place from which every table and page takes it.</summary>
/// <remarks>A decision never erases the computed verdict; it stands beside it. Without decisions the two are the same. Which decision comes first: <see cref="RecordingDecisions"/>.</remarks>
public static class FinalVerdict
{
    /// <summary>The final verdict of one channel during one trial.</summary>
    public static Grade OfTrial(RecordingResult recording, ChannelResult channel, CellResult cell) =>
        DecisionOn(recording, channel, cell)?.Decision.Verdict ?? cell.Verdict;

    /// <summary>The final verdict of a channel.</summary>
    public static Grade OfChannel(RecordingResult recording, ChannelResult channel) => DecisionOn(recording, channel)?.Decision.Verdict ?? channel.Verdict;

    /// <summary>The decision that holds for a channel during a trial; null when the computed verdict stands.</summary>
    public static StatedDecision? DecisionOn(RecordingResult recording, ChannelResult channel, CellResult cell)
    {
        ArgumentNullException.ThrowIfNull(recording);
        return recording.Decisions?.OfTrial(channel.Name, cell.Trial, cell.Verdict);
    }

    /// <summary>The decision that holds for a channel; null when the computed verdict stands.</summary>
    public static StatedDecision? DecisionOn(RecordingResult recording, ChannelResult channel)
    {
        ArgumentNullException.ThrowIfNull(recording);
        return recording.Decisions?.OfChannel(channel.Name);
    }
}
