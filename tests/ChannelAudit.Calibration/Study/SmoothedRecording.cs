using ChannelAudit.Recordings;

namespace ChannelAudit.Calibration.Study;

/// <summary>A recording as a program that rectifies and smooths would have stored it.</summary>
internal static class SmoothedRecording
{
    /// <summary>Every channel without its mean, rectified, then averaged over a sliding window.</summary>
    /// <param name="recording">An unbroken recording.</param>
    /// <param name="windowS">Length of the window in seconds; 0 for rectified only.</param>
    public static Recording Of(Recording recording, double windowS) => new()
    {
        FileName = recording.FileName,
        Format = recording.Format,
        Channels = [.. recording.Channels.Select(channel => channel with { LowerRail = null, UpperRail = null, Prefilter = Prefilter.Unknown })],
        Annotations = recording.Annotations,
        DurationS = recording.DurationS,
        Samples = new Source([.. recording.Channels.Select(channel => Smoothed(recording, channel, windowS))]),
    };

    private static double[] Smoothed(Recording recording, Channel channel, double windowS)
    {
        double[] samples = new double[channel.StoredLength];
        recording.Samples.Read(channel.Index, 0, samples);
        double mean = samples.Average();
        int half = (int)(windowS * channel.Rate.Value / 2);
        double[] sums = new double[samples.Length + 1];
        for (int i = 0; i < samples.Length; i++)
        {
            sums[i + 1] = sums[i] + Math.Abs(samples[i] - mean);
        }

        for (int i = 0; i < samples.Length; i++)
        {
            int from = Math.Max(0, i - half);
            int to = Math.Min(samples.Length, i + half + 1);
            double value = (sums[to] - sums[from]) / (to - from);
            samples[i] = channel.Step is { } step ? Math.Round(value / step) * step : value;
        }

        return samples;
    }

    private sealed class Source(double[][] samples) : ISampleSource
    {
        public void Read(int channel, long start, Span<double> destination) => samples[channel].AsSpan((int)start, destination.Length).CopyTo(destination);

        public void Dispose()
        {
            // Nothing is open.
        }
    }
}
