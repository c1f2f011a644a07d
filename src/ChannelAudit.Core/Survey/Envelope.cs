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

        EnvelopeSums sums = new(channel);
        int warmUp = PopFilter.WarmUp(rate);
        double[] filtered = [];
        foreach (SampleBlock block in SampleBlocks.Of(recording, channel, channel.Stretches, cancellation, warmUp))
        {
            if (filtered.Length < block.Samples.Length)
            {
                filtered = new double[block.Samples.Length];
            }

            Span<double> y = filtered.AsSpan(0, block.Samples.Length);
            SettledHighPass.Filter(PopFilter.At(rate), block.WithCarry.Span, block.WithCarry.Length - y.Length, y);
            sums.Add(y, block.Start);
        }

        return sums.ToEnvelope();
    }

    /// <summary>The envelope of means over 20 ms from time zero, not a number where nothing is stored; null when there is none.</summary>
    /// <param name="means">The means; overwritten.</param>
    internal static Envelope? OfMeans(double[] means)
    {
        double[] smooth = Medians(means);

        // The means have served: their place takes what is known, to be sorted.
        int known = 0;
        foreach (double value in smooth)
        {
            if (double.IsFinite(value))
            {
                means[known++] = value;
            }
        }

        return known == 0 ? null : new Envelope(smooth, Quantiles.Type7InPlace(means.AsSpan(0, known), RestProbability));
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
            medians[i] = Middle(near);
        }

        return medians;
    }

    // Sorted by insertion: for five values a general sort costs more in calls than in comparisons.
    private static double Middle(Span<double> few)
    {
        for (int i = 0; i < few.Length; i++)
        {
            double value = few[i];
            if (double.IsNaN(value))
            {
                return double.NaN;
            }

            int place = i;
            for (; place > 0 && few[place - 1] > value; place--)
            {
                few[place] = few[place - 1];
            }

            few[place] = value;
        }

        return few[few.Length / 2];
    }
}
