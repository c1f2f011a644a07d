using System.Collections.Immutable;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>The trials that may be decided with another one: of the same channel, with the same computed verdict for the same reasons, and not decided.</summary>
internal static class AlikeCells
{
    // More are left for the next time: a request shall not hold the ledger for long.
    private const int Most = 500;

    /// <summary>The numbers of the cells like one, without it; none in a blind review, and none of a trial that passed.</summary>
    /// <param name="book">The cells.</param>
    /// <param name="number">The number of a cell, from 1.</param>
    public static ImmutableArray<int> To(ReviewBook book, int number)
    {
        ReviewCell place = book.Cells[number - 1];
        ChannelResult channel = book.BareOf(place.Recording).Channels[place.Channel];
        CellResult own = channel.Cells[place.Cell];
        return book.Options.IsBlind || own.Verdict == Grade.Pass
            ? []
            :
            [
                .. Enumerable.Range(0, channel.Cells.Length)
                    .Where(at => at != place.Cell && IsLike(own, channel.Cells[at]))
                    .Select(at => book.NumberOf(place with { Cell = at }))
                    .Where(other => !book.IsDecided(other))
                    .Take(Most),
            ];
    }

    private static bool IsLike(CellResult one, CellResult other) =>
        one.Verdict == other.Verdict && one.Reasons.AsSpan().SequenceEqual(other.Reasons.AsSpan(), StringComparer.Ordinal);
}
