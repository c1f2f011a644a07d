using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Filters;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Survey;

/// <summary>How strongly a channel moves above 20 Hz, fifty times a second; for rhythms, not for amplitudes.</summary>
/// <remarks>The mean of |y| over 20 ms, y as for pops; then the median of five neighbours, so that single spikes and motor units leave nothing.</remarks>
public sealed class Envelope
{
    /// <summary>Values a second.</summary>
    public const double RateHz = 50;

    private const int Around = 2;
    private const double RestProbability = 0.2;

    private readonly double[] values;

    private Envelope(double[] values, double rest)
    {
        this.values = values;
        Rest = rest;
    }

    /// <summary>The values from time zero, not a number where nothing is stored.</summary>
    public ReadOnlySpan<double> Values => values;

    /// <summary>Their 20th percentile: the channel at rest.</summary>
    public double Rest { get; }

    /// <summary>The envelope of a channel; null when it has no samples or is sampled too slowly.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channel">The channel.</param>
    /// <param name="cancellation">Checked for every block.</param>
    public static Envelope? Of(Recording recording, Channel channel, CancellationToken cancellation)
    {
        double rate = channel.Rate.Value;
        if (rate < PopFilter.LeastRateHz || channel.StoredLength == 0)
        {
            return null;
        }

        double[] sums = new double[(int)(channel.TimelineLength * RateHz / rate) + 1];
        int[] counts = new int[sums.Length];
        int warmUp = PopFilter.WarmUp(rate);
        double[] filtered = [];
        foreach (SampleBlock block in SampleBlocks.Of(recording, channel, channel.Stretches, cancellation, warmUp))
        {
            if (filtered.Length < block.Samples.Length)
            {
                filtered = new double[block.Samples.Length];
            }

            SettledHighPass.Filter(PopFilter.At(rate), block.WithCarry.Span, block.WithCarry.Length - block.Samples.Length, filtered.AsSpan(0, block.Samples.Length));
            for (int i = 0; i < block.Samples.Length; i++)
            {
                int place = (int)((block.Start + i) * RateHz / rate);
                sums[place] += Math.Abs(filtered[i]);
                counts[place]++;
            }
        }

        for (int i = 0; i < sums.Length; i++)
        {
            sums[i] = counts[i] == 0 ? double.NaN : sums[i] / counts[i];
        }

        double[] smooth = Medians(sums);
        double[] known = [.. smooth.Where(double.IsFinite)];
        return known.Length == 0 ? null : new Envelope(smooth, Quantiles.Type7InPlace(known, RestProbability));
    }

    private static double[] Medians(double[] values)
    {
        double[] medians = new double[values.Length];
        Span<double> around = stackalloc double[(2 * Around) + 1];
        for (int i = 0; i < values.Length; i++)
        {
            int from = Math.Clamp(i - Around, 0, Math.Max(0, values.Length - around.Length));
            Span<double> near = around[..Math.Min(around.Length, values.Length)];
            values.AsSpan(from, near.Length).CopyTo(near);
            near.Sort();
            medians[i] = double.IsNaN(near[0]) ? double.NaN : near[near.Length / 2];
        }

        return medians;
    }
}
