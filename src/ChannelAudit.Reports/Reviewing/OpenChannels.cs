using System.Collections.Immutable;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>The channels whose own verdict is to be settled as a whole and is not: beside their trials, these are left to do.</summary>
internal static class OpenChannels
{
    /// <summary>The first cell of each in the order of the review; none in a blind review, which is about trials alone.</summary>
    /// <param name="book">The cells.</param>
    public static ImmutableArray<int> Of(ReviewBook book) => book.Options.IsBlind ? [] :
    [
        .. Enumerable.Range(0, book.Audit.Recordings.Length)
            .SelectMany(recording => In(book, recording, book.BareOf(recording)))
            .Order(),
    ];

    private static IEnumerable<int> In(ReviewBook book, int recording, RecordingResult result) =>
        from place in Enumerable.Range(0, result.Channels.Length)
        let channel = result.Channels[place]
        where channel.Verdict != Grade.Pass && ReviewOrder.Holds(book.Scope, channel.Verdict)
            && !channel.Cells.IsEmpty && FinalVerdict.DecisionOn(result, channel) is null
        select Enumerable.Range(0, channel.Cells.Length).Min(cell => book.NumberOf(new ReviewCell(recording, place, cell)));
}
