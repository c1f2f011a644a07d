using System.Collections.Immutable;
using ChannelAudit.Recordings;

namespace ChannelAudit.Synthesis;

/// <summary>Samples of a made recording, read from memory.</summary>
/// <param name="channels">The channels with their stretches.</param>
/// <param name="codes">Codes of the whole time axis, one array a channel.</param>
/// <param name="stepUv">Size of a code in µV.</param>
internal sealed class ArraySampleSource(ImmutableArray<Channel> channels, ImmutableArray<int[]> codes, double stepUv) : ISampleSource
{
    /// <inheritdoc/>
    public void Read(int channel, long start, Span<double> destination)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(start);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(start, channels[channel].StoredLength - destination.Length);
        foreach (Stretch stretch in channels[channel].Stretches)
        {
            long skipped = start - stretch.StoredStart;
            if (skipped >= stretch.Length || destination.IsEmpty)
            {
                continue;
            }

            int count = (int)Math.Min(stretch.Length - skipped, destination.Length);
            ReadOnlySpan<int> source = codes[channel].AsSpan((int)(stretch.Start + skipped), count);
            for (int i = 0; i < count; i++)
            {
                destination[i] = source[i] * stepUv;
            }

            destination = destination[count..];
            start += count;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        // Nothing is held open.
    }
}
