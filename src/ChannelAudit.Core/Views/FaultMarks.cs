using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Measures;
using ChannelAudit.Segments;

namespace ChannelAudit.Views;

/// <summary>Where exactly samples of a window are at a rail, flat or missing.</summary>
internal static class FaultMarks
{
    /// <summary>The marks of a window, cut off at its edges; ranges of a kind in order of time.</summary>
    /// <param name="window">The window; what lies in none of its pieces is missing.</param>
    /// <param name="clipped">Samples at a rail.</param>
    /// <param name="flat">Flat stretches.</param>
    /// <param name="rateHz">Samples per second.</param>
    public static ImmutableArray<FaultMark> In(Window window, SampleRanges clipped, SampleRanges flat, double rateHz)
    {
        IEnumerable<FaultMark> gaps = window.Pieces
            .Select(piece => piece.End)
            .Prepend(window.Start)
            .Zip(window.Pieces.Select(piece => piece.Start).Append(window.End))
            .Where(gap => gap.Second > gap.First)
            .Select(gap => Mark(ReasonCode.Dropout, gap.First, gap.Second));
        return [.. Inside(ReasonCode.Clipping, clipped), .. Inside(ReasonCode.Flatline, flat), .. gaps];

        IEnumerable<FaultMark> Inside(string reason, SampleRanges ranges) => ranges.All
            .Where(range => range.To > window.Start && range.From < window.End)
            .Select(range => Mark(reason, Math.Max(range.From, window.Start), Math.Min(range.To, window.End)));

        FaultMark Mark(string reason, long from, long to) => new(reason, from / rateHz, to / rateHz);
    }
}
