using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;

namespace ChannelAudit.Excerpts;

/// <summary>A part of one channel: its samples, and where on the recording's time axis they lie.</summary>
/// <param name="Pieces">Unbroken pieces in order: timeline index of the first sample (round(time x rate)), and how many there are.</param>
/// <param name="Samples">The samples of all pieces, one after another, in µV (or in the file's own numbers for a channel without unit).</param>
public sealed record Excerpt(ImmutableArray<(long Start, long Length)> Pieces, double[] Samples)
{
    /// <summary>The pieces as stretches of a recording that holds only them.</summary>
    internal ImmutableArray<Stretch> Stretches
    {
        get
        {
            long stored = 0;
            ImmutableArray<Stretch>.Builder stretches = ImmutableArray.CreateBuilder<Stretch>(Pieces.Length);
            foreach ((long start, long length) in Pieces)
            {
                stretches.Add(new Stretch(start, length, stored));
                stored += length;
            }

            return stretches.MoveToImmutable();
        }
    }

    /// <summary>What is stored of a channel between two times, which may lie outside of the recording.</summary>
    internal static Excerpt Of(Recording recording, Channel channel, decimal fromS, decimal toS)
    {
        Window window = Window.Between(channel, fromS, toS);
        double[] samples = new double[window.Stored];
        int done = 0;
        foreach (Stretch piece in window.Pieces)
        {
            recording.Samples.Read(channel.Index, piece.StoredStart, samples.AsSpan(done, (int)piece.Length));
            done += (int)piece.Length;
        }

        return new Excerpt([.. window.Pieces.Select(piece => (piece.Start, piece.Length))], samples);
    }

    /// <summary>Whether the pieces are in order, apart from each other, and as long together as the samples.</summary>
    public bool IsConsistent
    {
        get
        {
            long end = long.MinValue;
            long total = 0;
            foreach ((long start, long length) in Pieces)
            {
                if (length <= 0 || start < end || start > long.MaxValue - length || length > Samples.Length)
                {
                    return false;
                }

                end = start + length;
                total += length;
            }

            return total == Samples.Length;
        }
    }
}
