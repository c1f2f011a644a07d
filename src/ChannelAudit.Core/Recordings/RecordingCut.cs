using System.Collections.Immutable;

namespace ChannelAudit.Recordings;

/// <summary>The first part of a recording, as if it had been stopped there.</summary>
internal static class RecordingCut
{
    /// <summary>The part before a moment; samples are shared with the whole, which disposing of the part leaves open.</summary>
    /// <param name="recording">The whole.</param>
    /// <param name="seconds">Where it ends, seconds from the first stored sample.</param>
    /// <param name="samples">The samples of the whole, where others than its own are to be read; null for its own.</param>
    public static Recording Before(Recording recording, decimal seconds, ISampleSource? samples = null) => new()
    {
        FileName = recording.FileName,
        Format = recording.Format,
        Channels = [.. recording.Channels.Select(channel => channel with { Stretches = Before(channel.Stretches, channel.Rate.IndexAt(seconds)) })],
        Annotations = [.. recording.Annotations.Where(note => note.OnsetS < seconds)],
        Warnings = recording.Warnings,
        DurationS = Math.Min(recording.DurationS, (double)seconds),
        Samples = new Shared(samples ?? recording.Samples),
    };

    private static ImmutableArray<Stretch> Before(ImmutableArray<Stretch> stretches, long end) =>
        [.. stretches.Where(stretch => stretch.Start < end).Select(stretch => stretch with { Length = Math.Min(stretch.Length, end - stretch.Start) })];

    /// <summary>The samples of the whole, which is somebody else's to close.</summary>
    private sealed class Shared(ISampleSource samples) : ISampleSource
    {
        public void Read(int channel, long start, Span<double> destination) => samples.Read(channel, start, destination);

        public void Dispose()
        {
            // The whole closes them.
        }
    }
}
