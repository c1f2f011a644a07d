using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Setup;

namespace ChannelAudit.Events;

/// <summary>Reads events from a trigger channel.</summary>
/// <remarks>
/// The base level is the commonest value that the setup does not list as a code. Each change to another value is an event: an instant at the first sample of that
/// value, its label the value as a number; the setup may choose another edge, the bits that count, and labels. A channel of more than 256 values is an analogue
/// pulse unless bits are chosen: its code is 1 from the middle between its lowest and highest value upwards, else 0.
/// </remarks>
public static class TriggerChannel
{
    private const int MostCodes = 256;
    private const int MostMaskedCodes = 1 << 16;
    private const int BlockSamples = 1 << 14;
    private const double WholeWithin = 0.01;

    /// <summary>Reads the events of a channel: every code that begins.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channel">Position in <see cref="Recording.Channels"/>.</param>
    /// <returns>The events in order of time, with a duration of 0.</returns>
    public static ImmutableArray<RecordedEvent> Read(Recording recording, int channel) => Read(recording, channel, new TriggerSetup()).Events;

    /// <summary>Reads the events of a channel as the setup says.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channel">Position in <see cref="Recording.Channels"/>.</param>
    /// <param name="rules">Edge, bits, labels, least distance.</param>
    /// <returns>The events in order of time, those that come too soon apart, and a warning of codes that are not listed.</returns>
    /// <exception cref="ChannelAuditException">When bits are chosen of values that are no whole numbers; usage fault.</exception>
    public static TrialEvents Read(Recording recording, int channel, TriggerSetup rules)
    {
        Channel signal = recording.Channels[channel];
        Func<double, double> code = rules.Mask is { } mask ? value => Masked(recording, signal, value, mask) : value => value;
        (Dictionary<double, long> counts, double lowest, double highest) = Count(recording, signal, code, rules.Mask is null ? MostCodes : MostMaskedCodes);
        if (counts.Count == 0 || lowest == highest)
        {
            return new TrialEvents(TrialSource.Trigger, recording.FileName, [], []);
        }

        double? level = BaseOf(counts, rules);
        if (rules.Mask is null && counts.Count > MostCodes)
        {
            double middle = (lowest + highest) / 2;
            code = value => value >= middle ? 1 : 0;
            level = 0;
        }

        TriggerDecoder decoder = new(signal.Rate, rules, level);
        foreach ((long start, double[] values, int length) in Blocks(recording, signal))
        {
            for (int i = 0; i < length; i++)
            {
                decoder.Add(start + i, code(values[i]));
            }
        }

        return decoder.Finish(recording.FileName, signal.Label, signal.TimelineLength);
    }

    private static double? BaseOf(Dictionary<double, long> counts, TriggerSetup rules)
    {
        KeyValuePair<double, long>[] unlisted =
            [.. counts.Where(pair => !rules.Codes.ContainsKey((long)pair.Key)).OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key)];
        return unlisted.Length == 0 ? null : unlisted[0].Key;
    }

    private static double Masked(Recording recording, Channel signal, double value, int mask)
    {
        double whole = Math.Round(value);
        return Math.Abs(value - whole) <= WholeWithin ? (long)whole & mask : throw TrialErrors.NotWholeNumbers(recording.FileName, signal.Label);
    }

    private static (Dictionary<double, long> Counts, double Lowest, double Highest) Count(Recording recording, Channel signal, Func<double, double> code, int most)
    {
        Dictionary<double, long> counts = [];
        double lowest = double.PositiveInfinity;
        double highest = double.NegativeInfinity;
        foreach ((_, double[] values, int length) in Blocks(recording, signal))
        {
            foreach (double value in values.AsSpan(0, length))
            {
                double now = code(value);
                lowest = Math.Min(lowest, now);
                highest = Math.Max(highest, now);
                if (counts.Count <= most)
                {
                    counts[now] = counts.GetValueOrDefault(now) + 1;
                }
            }
        }

        return (counts, lowest, highest);
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
