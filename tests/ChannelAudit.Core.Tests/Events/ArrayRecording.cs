using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using ChannelAudit.Recordings;

namespace ChannelAudit.Tests.Events;

/// <summary>A recording in memory.</summary>
[SuppressMessage("Reliability", "CA2000", Justification = "A recording in memory holds nothing to give back.")]
internal static class ArrayRecording
{
    /// <summary>Channels of equal rate, each with its label and samples.</summary>
    public static Recording Of(double rateHz, params (string Label, double[] Values)[] channels) => new()
    {
        FileName = "made.edf",
        Format = "EDF",
        DurationS = channels[0].Values.Length / rateHz,
        Samples = new Source([.. channels.Select(channel => channel.Values)]),
        Channels =
        [
            .. channels.Select((channel, index) => new Channel
            {
                Index = index,
                Label = channel.Label,
                RawLabel = channel.Label,
                FileUnit = "uV",
                Rate = Rational.FromDecimal((decimal)rateHz),
                Step = 1,
                Stretches = [new Stretch(0, channel.Values.Length, 0)],
            }),
        ],
    };

    /// <summary>One silent channel of some length.</summary>
    public static Recording Silent(double durationS, params Annotation[] annotations)
    {
        Recording plain = Of(100, ("EMG", new double[(int)(durationS * 100)]));
        return new Recording
        {
            FileName = plain.FileName,
            Format = plain.Format,
            DurationS = plain.DurationS,
            Samples = plain.Samples,
            Channels = plain.Channels,
            Annotations = [.. annotations],
        };
    }

    private sealed class Source(ImmutableArray<double[]> values) : ISampleSource
    {
        public void Read(int channel, long start, Span<double> destination) => values[channel].AsSpan((int)start, destination.Length).CopyTo(destination);

        public void Dispose()
        {
            // Nothing is held.
        }
    }
}
