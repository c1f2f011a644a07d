using ChannelAudit.Recordings;
using ChannelAudit.Survey;

namespace ChannelAudit.Detectability;

/// <summary>What planting needs to know of a channel as recorded: its level, and how far it swings.</summary>
internal sealed class HostChannel
{
    private readonly float[] swings;
    private readonly float[] sorted;

    private HostChannel(Channel channel, double median, float[] swings)
    {
        Channel = channel;
        Median = median;
        this.swings = swings;
        sorted = [.. swings];
        Array.Sort(sorted);
    }

    /// <summary>The channel.</summary>
    public Channel Channel { get; }

    /// <summary>The median of its samples.</summary>
    public double Median { get; }

    /// <summary>Reads a channel.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channel">One of its channels.</param>
    /// <param name="cancellation">Checked often.</param>
    public static HostChannel Of(Recording recording, Channel channel, CancellationToken cancellation)
    {
        float[] samples = new float[channel.StoredLength];
        int place = 0;
        foreach (SampleBlock block in SampleBlocks.Of(recording, channel, channel.Stretches, cancellation))
        {
            foreach (double sample in block.Samples.Span)
            {
                samples[place++] = (float)sample;
            }
        }

        float[] ordered = [.. samples];
        Array.Sort(ordered);
        double median = ordered.Length == 0 ? 0 : ordered[ordered.Length / 2];
        return new HostChannel(channel, median, [.. samples.Select(sample => (float)Math.Abs(sample - median))]);
    }

    /// <summary>The distance from the median that a share of the samples stays below.</summary>
    /// <param name="share">0 to 1.</param>
    public double SwingAt(double share) => sorted.Length == 0 ? 0 : sorted[(int)Math.Min(sorted.Length - 1, share * sorted.Length)];

    /// <summary>How many samples of a stretch are at least as far from the median.</summary>
    /// <param name="fromS">Start in seconds.</param>
    /// <param name="toS">End in seconds.</param>
    /// <param name="distance">In the unit of the samples.</param>
    public int Beyond(double fromS, double toS, double distance)
    {
        long from = (long)(fromS * Channel.Rate.Value);
        long to = (long)(toS * Channel.Rate.Value);
        int count = 0;
        int passed = 0;
        foreach (Stretch stretch in Channel.Stretches)
        {
            for (long at = Math.Max(from, stretch.Start); at < Math.Min(to, stretch.End); at++)
            {
                count += swings[passed + (int)(at - stretch.Start)] >= distance ? 1 : 0;
            }

            passed += (int)stretch.Length;
        }

        return count;
    }
}
