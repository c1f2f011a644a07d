using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Recordings;

namespace ChannelAudit.Events;

/// <summary>Reads events from a trigger channel.</summary>
/// <remarks>
/// The base level is the commonest value. Each change to another value is an event: an instant at the first sample of that value, its label the value as a
/// number. A return to the base level is none. A channel of more than 256 values is an analogue pulse: events are its crossings, upwards, of the middle between its
/// lowest and highest value, labelled <c>1</c>.
/// </remarks>
public static class TriggerChannel
{
    private const int MostCodes = 256;
    private const int BlockSamples = 1 << 14;

    /// <summary>Reads the events of a channel.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channel">Position in <see cref="Recording.Channels"/>.</param>
    /// <returns>The events in order of time, with a duration of 0.</returns>
    public static ImmutableArray<RecordedEvent> Read(Recording recording, int channel)
    {
        Channel signal = recording.Channels[channel];
        (Dictionary<double, long> counts, double lowest, double highest) = Count(recording, signal);
        if (counts.Count == 0 || lowest == highest)
        {
            return [];
        }

        if (counts.Count > MostCodes)
        {
            double middle = (lowest + highest) / 2;
            return Changes(recording, signal, value => value >= middle ? 1 : 0, 0);
        }

        double level = counts.OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key).First().Key;
        return Changes(recording, signal, value => value, level);
    }

    private static (Dictionary<double, long> Counts, double Lowest, double Highest) Count(Recording recording, Channel signal)
    {
        Dictionary<double, long> counts = [];
        double lowest = double.PositiveInfinity;
        double highest = double.NegativeInfinity;
        foreach ((_, double[] values, int length) in Blocks(recording, signal))
        {
            foreach (double value in values.AsSpan(0, length))
            {
                lowest = Math.Min(lowest, value);
                highest = Math.Max(highest, value);
                if (counts.Count <= MostCodes)
                {
                    counts[value] = counts.GetValueOrDefault(value) + 1;
                }
            }
        }

        return (counts, lowest, highest);
    }

    private static ImmutableArray<RecordedEvent> Changes(Recording recording, Channel signal, Func<double, double> code, double level)
    {
        ImmutableArray<RecordedEvent>.Builder events = ImmutableArray.CreateBuilder<RecordedEvent>();
        double previous = level;
        foreach ((long start, double[] values, int length) in Blocks(recording, signal))
        {
            for (int i = 0; i < length; i++)
            {
                double now = code(values[i]);
                if (now != previous && now != level)
                {
                    decimal onset = (decimal)(start + i) * signal.Rate.Denominator / signal.Rate.Numerator;
                    events.Add(new RecordedEvent(onset, 0, now.ToString("G9", CultureInfo.InvariantCulture)));
                }

                previous = now;
            }
        }

        return events.ToImmutable();
    }

    private static IEnumerable<(long Start, double[] Values, int Length)> Blocks(Recording recording, Channel signal)
    {
        double[] values = new double[BlockSamples];
        foreach (Stretch stretch in signal.Stretches)
        {
            for (long done = 0; done < stretch.Length; done += BlockSamples)
            {
                int length = (int)Math.Min(BlockSamples, stretch.Length - done);
                recording.Samples.Read(signal.Index, stretch.StoredStart + done, values.AsSpan(0, length));
                yield return (stretch.Start + done, values, length);
            }
        }
    }
}
