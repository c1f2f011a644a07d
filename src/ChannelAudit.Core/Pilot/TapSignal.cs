using ChannelAudit.Recordings;
using ChannelAudit.Signals.Filters;

namespace ChannelAudit.Pilot;

/// <summary>A stretch of a channel as taps show in it: the slow deflections of a wire that was moved, without offset, mains and muscle.</summary>
/// <remarks>
/// A mean over one period of the mains empties the mains and all their harmonics and leaves what is slower than about
/// 20 Hz; a high-pass at 2 Hz takes the baseline.
/// </remarks>
internal static class TapSignal
{
    private const double CornerHz = 2;
    private const double WarmUpS = 1;

    /// <summary>Reads it.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channel">The channel.</param>
    /// <param name="fromS">Start in seconds.</param>
    /// <param name="toS">End in seconds.</param>
    /// <param name="mainsHz">The mains frequency.</param>
    /// <returns>The samples; empty when the stretch is not stored whole.</returns>
    public static double[] Read(Recording recording, Channel channel, decimal fromS, decimal toS, double mainsHz)
    {
        long from = channel.Rate.IndexAt(fromS);
        long to = channel.Rate.IndexAt(toS);
        int period = Math.Max(1, (int)Math.Round(channel.Rate.Value / mainsHz));
        int before = (int)Math.Round(WarmUpS * channel.Rate.Value) + period;
        Stretch whole = channel.Stretches.FirstOrDefault(stretch => stretch.Start <= from && stretch.End >= to);
        if (to <= from || whole.Length == 0)
        {
            return [];
        }

        int carry = (int)Math.Min(before, from - whole.Start);
        double[] samples = new double[carry + (int)(to - from)];
        recording.Samples.Read(channel.Index, whole.StoredStart + (from - carry - whole.Start), samples);
        Smooth(samples, period);
        double[] taps = new double[(int)(to - from)];
        SettledHighPass.Filter(Butterworth.HighPass(CornerHz, channel.Rate.Value), samples, carry, taps);
        return taps;
    }

    // The mean of the last samples, as many as a period has; at the start of those that there are.
    private static void Smooth(double[] samples, int period)
    {
        double[] raw = [.. samples];
        double sum = 0;
        for (int i = 0; i < raw.Length; i++)
        {
            sum += raw[i] - (i >= period ? raw[i - period] : 0);
            samples[i] = sum / Math.Min(i + 1, period);
        }
    }
}
