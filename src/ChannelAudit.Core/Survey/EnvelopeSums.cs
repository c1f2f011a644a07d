using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Survey;

/// <summary>Sums of |y| over 20 ms while the blocks of a channel go by, y as for pops: what its envelope is made of.</summary>
public sealed class EnvelopeSums
{
    private readonly double rate;
    private readonly long whole;
    private readonly double[] sums;
    private readonly int[] counts;

    /// <summary>Starts without samples.</summary>
    /// <param name="channel">The channel.</param>
    public EnvelopeSums(Channel channel)
    {
        rate = channel.Rate.Value;
        whole = rate % Envelope.RateHz == 0 ? (long)(rate / Envelope.RateHz) : 0;
        sums = new double[(int)(channel.TimelineLength * Envelope.RateHz / rate) + 1];
        counts = new int[sums.Length];
    }

    /// <summary>The envelope; null without samples.</summary>
    public Envelope? ToEnvelope()
    {
        double[] means = new double[sums.Length];
        for (int i = 0; i < means.Length; i++)
        {
            means[i] = counts[i] == 0 ? double.NaN : sums[i] / counts[i];
        }

        return Envelope.OfMeans(means);
    }

    /// <summary>Adds a block.</summary>
    /// <param name="passed">Its samples behind the filter for pops.</param>
    /// <param name="start">Timeline index of the first.</param>
    public void Add(ReadOnlySpan<double> passed, long start)
    {
        for (int i = 0; i < passed.Length;)
        {
            int place = PlaceOf(start + i);
            int length = (int)Math.Min(passed.Length, FirstOf(place + 1) - start) - i;
            if (AreFourAlike(place, length, start + i, start + passed.Length))
            {
                RunSums.OfMagnitudes(passed[i..], length, sums.AsSpan(place, RunSums.Runs));
                counts.AsSpan(place, RunSums.Runs).Fill(length);
                i += RunSums.Runs * length;
                continue;
            }

            double sum = sums[place];
            foreach (double value in passed.Slice(i, length))
            {
                sum += Math.Abs(value);
            }

            (sums[place], counts[place]) = (sum, counts[place] + length);
            i += length;
        }
    }

    /// <summary>Whether four places that nothing was added to lie whole in a block and are equally long.</summary>
    private bool AreFourAlike(int place, int length, long from, long end)
    {
        if (from + (RunSums.Runs * length) > end)
        {
            return false;
        }

        for (int next = 1; next <= RunSums.Runs; next++)
        {
            if (FirstOf(place + next) != from + (next * length) || counts[place + next - 1] != 0)
            {
                return false;
            }
        }

        return true;
    }

    private long FirstOf(int place) => whole > 0 ? place * whole : SearchFirstOf(place);

    private int PlaceOf(long sample) => (int)(sample * Envelope.RateHz / rate);

    // Where the quotients were rounded the sample may be its neighbour.
    private long SearchFirstOf(int place)
    {
        long sample = (long)Math.Ceiling(place * rate / Envelope.RateHz);
        while (PlaceOf(sample - 1) >= place)
        {
            sample--;
        }

        while (PlaceOf(sample) < place)
        {
            sample++;
        }

        return sample;
    }
}
