using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Survey;

/// <summary>Goes through the one-second segments of a group of channels, four at a time, and hands out their spectra.</summary>
/// <remarks>
/// Segments start at each piece's first sample and every half segment after it; none crosses a gap. Memory holds four segments a channel.
/// </remarks>
public sealed class SegmentWalk
{
    private readonly ISampleSource samples;
    private readonly ImmutableArray<Channel> channels;
    private readonly SpectralFrame frame;
    private readonly double[] buffer;

    /// <summary>Prepares a walk.</summary>
    /// <param name="samples">Where the samples come from.</param>
    /// <param name="channels">The channels, all of one rate.</param>
    /// <param name="frame">A frame of that rate.</param>
    public SegmentWalk(ISampleSource samples, ImmutableArray<Channel> channels, SpectralFrame frame)
    {
        this.samples = samples;
        this.channels = channels;
        this.frame = frame;
        Batch = new SegmentBatch(frame.RateHz, frame.SegmentLength, channels.Length);
        buffer = new double[frame.SegmentLength + ((SegmentBatch.Lanes - 1) * frame.Hop)];
    }

    /// <summary>The spectra of the present four segments.</summary>
    public SegmentBatch Batch { get; }

    /// <summary>Visits all segments of some pieces.</summary>
    /// <param name="piecesOfChannels">For each channel its unbroken pieces: same starts and lengths for all, stored where each has them.</param>
    /// <param name="visit">Called with the timeline index of the first segment of each batch.</param>
    /// <param name="cancellation">Checked for every batch.</param>
    /// <param name="wants">Given the number of the first segment and how many follow, whether a batch is wanted; null for all.</param>
    /// <returns>Segments visited.</returns>
    public int Visit(
        ImmutableArray<ImmutableArray<Stretch>> piecesOfChannels,
        Action<long> visit,
        CancellationToken cancellation,
        Func<int, int, bool>? wants = null)
    {
        int total = 0;
        for (int piece = 0; piece < piecesOfChannels[0].Length; piece++)
        {
            long start = piecesOfChannels[0][piece].Start;
            int count = Welch.SegmentCount(piecesOfChannels[0][piece].Length, frame.SegmentLength, frame.Hop);
            for (int first = 0; first < count; first += SegmentBatch.Lanes)
            {
                cancellation.ThrowIfCancellationRequested();
                int segments = Math.Min(SegmentBatch.Lanes, count - first);
                if (wants is not null && !wants(total + first, segments))
                {
                    continue;
                }

                Load(piecesOfChannels, piece, first, segments);
                visit(start + ((long)first * frame.Hop));
            }

            total += count;
        }

        return total;
    }

    private void Load(ImmutableArray<ImmutableArray<Stretch>> piecesOfChannels, int piece, int first, int segments)
    {
        Span<double> needed = buffer.AsSpan(0, frame.SegmentLength + ((segments - 1) * frame.Hop));
        for (int i = 0; i < channels.Length; i++)
        {
            samples.Read(channels[i].Index, piecesOfChannels[i][piece].StoredStart + ((long)first * frame.Hop), needed);
            Batch.Load(i, needed, frame.Hop, segments);
        }
    }
}
