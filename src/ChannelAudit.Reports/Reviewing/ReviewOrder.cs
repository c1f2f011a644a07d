using System.Collections.Immutable;
using ChannelAudit.Results;
using ChannelAudit.Signals.Random;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>In which order cells are looked at.</summary>
internal static class ReviewOrder
{
    /// <summary>All cells: questionable ones first, then rejected, then the rest; each by recording, channel and trial.</summary>
    /// <param name="recordings">The results in the order of <c>audit.json</c>.</param>
    public static ImmutableArray<ReviewCell> Open(IReadOnlyList<RecordingResult> recordings) =>
        [.. Of(recordings, _ => true).OrderBy(cell => Rank(VerdictOf(recordings, cell)))];

    /// <summary>The cells of a scope in an order that says nothing: equal seeds, equal orders.</summary>
    /// <param name="recordings">The results in the order of <c>audit.json</c>.</param>
    /// <param name="order">Which cells, and the seed.</param>
    public static ImmutableArray<ReviewCell> Blind(IReadOnlyList<RecordingResult> recordings, BlindOrder order)
    {
        ReviewCell[] cells = [.. Of(recordings, verdict => Holds(order.Scope, verdict))];
        Shuffle.InPlace(cells.AsSpan(), new Pcg32(order.Seed));
        return [.. cells];
    }

    /// <summary>Whether a verdict is in a scope.</summary>
    public static bool Holds(ReviewScope scope, Grade verdict) => scope switch
    {
        ReviewScope.Questionable => verdict == Grade.Questionable,
        ReviewScope.Flagged => verdict != Grade.Pass,
        _ => true,
    };

    private static int Rank(Grade verdict) => verdict switch
    {
        Grade.Questionable => 0,
        Grade.Reject => 1,
        _ => 2,
    };

    private static Grade VerdictOf(IReadOnlyList<RecordingResult> recordings, ReviewCell cell) => recordings[cell.Recording].Channels[cell.Channel].Cells[cell.Cell].Verdict;

    private static IEnumerable<ReviewCell> Of(IReadOnlyList<RecordingResult> recordings, Func<Grade, bool> isAsked) =>
        from recording in Enumerable.Range(0, recordings.Count)
        from channel in Enumerable.Range(0, recordings[recording].Channels.Length)
        from cell in Enumerable.Range(0, recordings[recording].Channels[channel].Cells.Length)
        where isAsked(recordings[recording].Channels[channel].Cells[cell].Verdict)
        select new ReviewCell(recording, channel, cell);
}
