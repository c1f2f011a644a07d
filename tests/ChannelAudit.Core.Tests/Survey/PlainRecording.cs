using System.Collections.Immutable;
using ChannelAudit.Recordings;

namespace ChannelAudit.Tests.Survey;

/// <summary>A recording in memory whose channels share their stretches.</summary>
internal static class PlainRecording
{
    /// <summary>Channels named a, b, c ... with their stored samples.</summary>
    public static Recording Of(Rational rate, ImmutableArray<Stretch> stretches, params double[][] stored) => new()
    {
        FileName = "plain.edf",
        Format = "EDF+D",
        DurationS = rate.SecondsAt(stretches[^1].End),
        Samples = new Source(stored),
        Channels =
        [
            .. stored.Select((_, i) => new Channel
            {
                Index = i,
                Label = ((char)('a' + i)).ToString(),
                RawLabel = string.Empty,
                FileUnit = "uV",
                Rate = rate,
                Step = 1e-6,
                Stretches = stretches,
            }),
        ],
    };

    private sealed class Source(double[][] stored) : ISampleSource
    {
        public void Read(int channel, long start, Span<double> destination) => stored[channel].AsSpan((int)start, destination.Length).CopyTo(destination);

        public void Dispose()
        {
            // Nothing is held.
        }
    }
}
