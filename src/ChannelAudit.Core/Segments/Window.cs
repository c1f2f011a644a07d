using System.Collections.Immutable;
using ChannelAudit.Recordings;

namespace ChannelAudit.Segments;

/// <summary>A span of a channel's time axis in samples, and the unbroken pieces of it that are stored.</summary>
public readonly record struct Window
{
    private Window(long start, long end, ImmutableArray<Stretch> pieces)
    {
        Start = start;
        End = end;
        Pieces = pieces;
    }

    /// <summary>Timeline index of the first sample; may be negative.</summary>
    public long Start { get; }

    /// <summary>Timeline index behind the last sample; may lie beyond the end of the recording.</summary>
    public long End { get; }

    /// <summary>The stored pieces in order of time; none crosses a gap.</summary>
    public ImmutableArray<Stretch> Pieces { get; }

    /// <summary>Samples asked for.</summary>
    public long Length => End - Start;

    /// <summary>Samples stored.</summary>
    public long Stored => Pieces.Sum(piece => piece.Length);

    /// <summary>The window between two times, rounded to the nearest samples.</summary>
    public static Window Between(Channel channel, decimal fromS, decimal toS) =>
        Of(channel.Stretches, channel.Rate.IndexAt(fromS), channel.Rate.IndexAt(toS));

    /// <summary>The whole recording, from time zero to the channel's last sample.</summary>
    public static Window All(Channel channel) => new(0, channel.TimelineLength, channel.Stretches);

    /// <summary>The window between two timeline indices.</summary>
    /// <param name="stretches">The channel's unbroken stretches in order of time.</param>
    /// <param name="start">First sample.</param>
    /// <param name="end">Behind the last sample.</param>
    public static Window Of(ImmutableArray<Stretch> stretches, long start, long end)
    {
        ImmutableArray<Stretch>.Builder pieces = ImmutableArray.CreateBuilder<Stretch>();
        for (int i = FirstEndingAfter(stretches, start); i < stretches.Length && stretches[i].Start < end; i++)
        {
            Stretch stretch = stretches[i];
            long from = Math.Max(start, stretch.Start);
            long to = Math.Min(end, stretch.End);
            pieces.Add(new Stretch(from, to - from, stretch.StoredStart + (from - stretch.Start)));
        }

        return new Window(start, Math.Max(start, end), pieces.DrainToImmutable());
    }

    private static int FirstEndingAfter(ImmutableArray<Stretch> stretches, long index)
    {
        int low = 0;
        int high = stretches.Length;
        while (low < high)
        {
            int middle = (low + high) >>> 1;
            if (stretches[middle].End > index)
            {
                high = middle;
            }
            else
            {
                low = middle + 1;
            }
        }

        return low;
    }
}
