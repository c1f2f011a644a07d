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

    private static double Share(ChannelResult channel, Grade verdict) =>
        channel.Cells.IsEmpty ? 0 : (double)channel.Count(verdict) / channel.Cells.Length;
}
