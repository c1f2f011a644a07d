using System.Buffers;
using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;

namespace ChannelAudit.Survey;

/// <summary>Reads pieces of a channel in blocks of whole seconds, so that memory does not grow with their length.</summary>
public static class SampleBlocks
{
    private const int WantedSamples = 32768;

    /// <summary>The blocks in order; each piece starts a block, and each block but a piece's last holds whole seconds.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channel">The channel.</param>
    /// <param name="pieces">Unbroken pieces of it.</param>
    /// <param name="cancellation">Checked for every block.</param>
    /// <param name="carry">Samples before each block to give along, as far as the piece has them.</param>
    public static IEnumerable<SampleBlock> Of(
        Recording recording, Channel channel, ImmutableArray<Stretch> pieces, CancellationToken cancellation, int carry = 0)
    {
        int second = SpectralFrame.SegmentLengthOf(channel.Rate);
        int blockLength = Math.Max(1, WantedSamples / second) * second;
        long longest = pieces.IsEmpty ? 0 : pieces.Max(piece => piece.Length);
        double[] buffer = ArrayPool<double>.Shared.Rent(carry + (int)Math.Min(blockLength, longest));
        try
        {
            int number = 0;
            foreach (Stretch piece in pieces)
            {
                int carried = 0;
                for (long done = 0; done < piece.Length;)
                {
                    cancellation.ThrowIfCancellationRequested();
                    int length = (int)Math.Min(blockLength, piece.Length - done);
                    recording.Samples.Read(channel.Index, piece.StoredStart + done, buffer.AsSpan(carry, length));
                    yield return new SampleBlock(
                        number++,
                        piece.Start + done,
                        buffer.AsMemory(carry, length),
                        buffer.AsMemory(carry - carried, carried + length),
                        done + length == piece.Length);
                    int kept = Math.Min(carry, carried + length);
                    buffer.AsSpan(carry + length - kept, kept).CopyTo(buffer.AsSpan(carry - kept, kept));
                    carried = kept;
                    done += length;
                }
            }
        }
        finally
        {
            ArrayPool<double>.Shared.Return(buffer);
        }
    }

    /// <summary>The blocks of several channels, a block of each in turn, so that the file is gone through once.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channels">The channels.</param>
    /// <param name="carry">For each channel the samples before each block to give along.</param>
    /// <param name="visit">Given the channel's place in the list and its block.</param>
    /// <param name="cancellation">Checked for every block.</param>
    public static void VisitTogether(
        Recording recording,
        ImmutableArray<Channel> channels,
        Func<int, int> carry,
        Action<int, SampleBlock> visit,
        CancellationToken cancellation)
    {
        IEnumerator<SampleBlock>[] open =
            [.. channels.Select((channel, i) => Of(recording, channel, channel.Stretches, cancellation, carry(i)).GetEnumerator())];
        try
        {
            for (bool any = true; any;)
            {
                any = false;
                for (int i = 0; i < open.Length; i++)
                {
                    if (open[i].MoveNext())
                    {
                        any = true;
                        visit(i, open[i].Current);
                    }
                }
            }
        }
        finally
        {
            foreach (IEnumerator<SampleBlock> blocks in open)
            {
                blocks.Dispose();
            }
        }
    }
}
