using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Recordings made of others, sample by sample.</summary>
internal static class Altered
{
    /// <summary>Every sample times a gain plus an offset, with the limits that the file would then state.</summary>
    public static Recording Scaled(Recording recording, double gain, double offset) => Of(
        recording,
        [.. recording.Channels.Select(channel => channel with
        {
            Step = channel.Step * Math.Abs(gain),
            LowerRail = ((gain > 0 ? channel.LowerRail : channel.UpperRail) * gain) + offset,
            UpperRail = ((gain > 0 ? channel.UpperRail : channel.LowerRail) * gain) + offset,
        })],
        new ScaledSource(recording.Samples, gain, offset));

    /// <summary>The same samples under a header that states other filters.</summary>
    public static Recording Stating(Recording recording, Prefilter stated) =>
        Of(recording, [.. recording.Channels.Select(channel => channel with { Prefilter = stated })], new ScaledSource(recording.Samples, 1, 0));

    /// <summary>The same channels in another order.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="order">For each new place the old one.</param>
    public static Recording Reordered(Recording recording, int[] order) => Of(
        recording,
        [.. order.Select((old, i) => recording.Channels[old] with { Index = i })],
        new ReorderedSource(recording.Samples, order));

    /// <summary>The samples of a trial as a recording of their own, with the trial as its only annotation.</summary>
    /// <param name="recording">The recording, unbroken during the trial.</param>
    /// <param name="trial">The trial.</param>
    public static Recording CutOut(Recording recording, Trial trial)
    {
        (long Start, long Length)[] windows = [.. recording.Channels.Select(channel => (
            channel.Rate.IndexAt(trial.OnsetS), channel.Rate.IndexAt(trial.OnsetS + trial.DurationS) - channel.Rate.IndexAt(trial.OnsetS)))];
        return new Recording
        {
            FileName = recording.FileName,
            Format = recording.Format,
            Channels = [.. recording.Channels.Select((channel, i) => channel with { Stretches = [new Stretch(0, windows[i].Length, 0)] })],
            Annotations = [new Annotation(0, trial.DurationS, trial.Label ?? string.Empty)],
            DurationS = (double)trial.DurationS,
            Samples = new CutSource(recording.Samples, [.. windows.Select((window, i) => StoredAt(recording.Channels[i], window.Start))]),
        };
    }

    /// <summary>One recording with a channel of another.</summary>
    public static Recording Mixed(Recording recording, Recording other, int channel) => Of(
        recording,
        [.. recording.Channels.Select((own, i) => i == channel ? other.Channels[i] : own)],
        new MixedSource(recording.Samples, other.Samples, channel));

    /// <summary>Channels whose label holds a word with all samples changed; they then state no rail.</summary>
    /// <param name="recording">The recording, unbroken.</param>
    /// <param name="word">The word; empty for all channels.</param>
    /// <param name="change">From all samples to as many others.</param>
    /// <param name="step">The step between values, or null for that of the recording.</param>
    public static Recording Changed(Recording recording, string word, Func<double[], double[]> change, double? step)
    {
        ImmutableArray<bool> isChanged = [.. recording.Channels.Select(channel => channel.Label.Contains(word, StringComparison.Ordinal))];
        double[][] samples = [.. recording.Channels.Select((channel, i) =>
        {
            double[] all = new double[channel.StoredLength];
            recording.Samples.Read(channel.Index, 0, all);
            return isChanged[i] ? change(all) : all;
        })];
        return Of(
            recording,
            [.. recording.Channels.Select((channel, i) => isChanged[i] ? channel with { Step = step ?? channel.Step, LowerRail = null, UpperRail = null } : channel)],
            new ArraySource(samples));
    }

    private static long StoredAt(Channel channel, long index)
    {
        Stretch stretch = channel.Stretches.Last(one => one.Start <= index);
        return stretch.StoredStart + index - stretch.Start;
    }

    private static Recording Of(Recording recording, ImmutableArray<Channel> channels, ISampleSource samples) => new()
    {
        FileName = recording.FileName,
        Format = recording.Format,
        Channels = channels,
        Annotations = recording.Annotations,
        DurationS = recording.DurationS,
        Samples = samples,
    };

    private sealed class ScaledSource(ISampleSource inner, double gain, double offset) : ISampleSource
    {
        public void Read(int channel, long start, Span<double> destination)
        {
            inner.Read(channel, start, destination);
            foreach (ref double value in destination)
            {
                value = (value * gain) + offset;
            }
        }

        public void Dispose()
        {
            // The other recording closes its own source.
        }
    }

    private sealed class ReorderedSource(ISampleSource inner, int[] order) : ISampleSource
    {
        public void Read(int channel, long start, Span<double> destination) => inner.Read(order[channel], start, destination);

        public void Dispose()
        {
            // The other recording closes its own source.
        }
    }

    private sealed class CutSource(ISampleSource inner, long[] starts) : ISampleSource
    {
        public void Read(int channel, long start, Span<double> destination) => inner.Read(channel, starts[channel] + start, destination);

        public void Dispose()
        {
            // The other recording closes its own source.
        }
    }

    private sealed class ArraySource(double[][] samples) : ISampleSource
    {
        public void Read(int channel, long start, Span<double> destination) => samples[channel].AsSpan((int)start, destination.Length).CopyTo(destination);

        public void Dispose()
        {
            // Nothing is open.
        }
    }

    private sealed class MixedSource(ISampleSource inner, ISampleSource other, int which) : ISampleSource
    {
        public void Read(int channel, long start, Span<double> destination) => (channel == which ? other : inner).Read(channel, start, destination);

        public void Dispose()
        {
            // The other recordings close their own sources.
        }
    }
}
