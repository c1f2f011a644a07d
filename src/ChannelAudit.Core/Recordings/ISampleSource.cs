namespace ChannelAudit.Recordings;

/// <summary>Random access to the stored samples of a recording; memory does not grow with the length of the file.</summary>
/// <remarks>Not safe for use by several threads at once: each takes a reader of its own, <see cref="Another"/>.</remarks>
public interface ISampleSource : IDisposable
{
    /// <summary>Reads consecutive stored samples of one channel.</summary>
    /// <param name="channel">Position in <see cref="Recording.Channels"/>.</param>
    /// <param name="start">Stored index of the first sample.</param>
    /// <param name="destination">Receives the samples, in µV (or in the file's own numbers for a channel without unit).</param>
    /// <exception cref="ArgumentOutOfRangeException">When the range is not inside the stored samples.</exception>
    void Read(int channel, long start, Span<double> destination);

    /// <summary>A reader of the same samples for another thread, valid until this one is disposed; null where there can be none.</summary>
    ISampleSource? Another() => null;
}
