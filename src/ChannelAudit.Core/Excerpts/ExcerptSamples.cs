using System.Collections.Immutable;
using ChannelAudit.Recordings;

namespace ChannelAudit.Excerpts;

/// <summary>Excerpts as the source of samples of a recording that holds nothing else.</summary>
/// <param name="excerpts">One a channel.</param>
internal sealed class ExcerptSamples(ImmutableArray<Excerpt> excerpts) : ISampleSource
{
    /// <inheritdoc/>
    public void Read(int channel, long start, Span<double> destination)
    {
        double[] samples = excerpts[channel].Samples;
        ArgumentOutOfRangeException.ThrowIfNegative(start);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(start, samples.Length - destination.Length);
        samples.AsSpan((int)start, destination.Length).CopyTo(destination);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        // In memory.
    }
}
