using ChannelAudit.Recordings;

namespace ChannelAudit.Detectability;

/// <summary>Samples that several threads read in turn.</summary>
/// <param name="samples">The samples, which somebody else closes.</param>
internal sealed class SharedSamples(ISampleSource samples) : ISampleSource
{
    private readonly Lock gate = new();

    /// <inheritdoc/>
    public void Read(int channel, long start, Span<double> destination)
    {
        lock (gate)
        {
            samples.Read(channel, start, destination);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        // Whoever opened them closes them.
    }
}
