using System.Collections.Immutable;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Wording;

/// <summary>The order in which people see recordings and channels: the worst first.</summary>
public static class WorstFirst
{
    /// <summary>Channels by final verdict, then by share of rejected, then of questionable trials, then file order.</summary>
    public static ImmutableArray<ChannelResult> Channels(RecordingResult recording) =>
    [
        .. recording.Channels
            .OrderByDescending(channel => FinalVerdict.OfChannel(recording, channel))
            .ThenByDescending(channel => Share(channel, Grade.Reject))
            .ThenByDescending(channel => Share(channel, Grade.Questionable)),
    ];

    /// <summary>Recordings by their worst channel, then by number of rejected channels, then by share of rejected trials, then by id.</summary>
    public static ImmutableArray<RecordingResult> Recordings(IEnumerable<RecordingResult> recordings) =>
    [
        .. recordings
            .OrderByDescending(Worst)
            .ThenByDescending(recording => recording.Channels.Count(channel => FinalVerdict.OfChannel(recording, channel) == Grade.Reject))
            .ThenByDescending(recording => recording.Channels.Sum(channel => Share(channel, Grade.Reject)))
            .ThenBy(recording => recording.Id, StringComparer.Ordinal),
    ];

    /// <summary>The worst final verdict of a recording's channels.</summary>
    public static Grade Worst(RecordingResult recording) =>
        recording.Channels.IsEmpty ? Grade.Pass : recording.Channels.Max(channel => FinalVerdict.OfChannel(recording, channel));

    private static double Share(ChannelResult channel, Grade verdict) =>
        channel.Cells.IsEmpty ? 0 : (double)channel.Count(verdict) / channel.Cells.Length;
}
