using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tables;

/// <summary>The verdict after decisions: the only place from which every table and page takes it.</summary>
/// <remarks>A decision never erases the computed verdict; it stands beside it. Without decisions the two are the same.</remarks>
public static class FinalVerdict
{
    /// <summary>The final verdict of one channel during one trial.</summary>
    public static Grade OfTrial(RecordingResult recording, ChannelResult channel, CellResult cell) => cell.Verdict;

    /// <summary>The final verdict of a channel.</summary>
    public static Grade OfChannel(RecordingResult recording, ChannelResult channel) => channel.Verdict;
}
