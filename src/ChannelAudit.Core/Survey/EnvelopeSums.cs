using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Survey;

/// <summary>Sums of |y| over 20 ms while the blocks of a channel go by, y as for pops: what its envelope is made of.</summary>
public sealed class EnvelopeSums
{
    // An hour and a half: 2 MB a channel.
    private const int InMemory = 1 << 18;

    private readonly double rate;
    private readonly long whole;
    private readonly int places;
    private readonly Column<double> means;
    private double sum;
    private int count;

    /// <summary>Starts without samples.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="spill">Takes what of a long recording does not stay in memory.</param>
    public EnvelopeSums(Channel channel, Spill? spill = null)
    {
        rate = channel.Rate.Value;
        whole = rate % Envelope.RateHz == 0 ? (long)(rate / Envelope.RateHz) : 0;
        places = (int)(channel.TimelineLength * Envelope.RateHz / rate) + 1;
        means = new Column<double>(spill, InMemory);
    }

    /// <summary>The envelope, behind the last block; null without samples.</summary>
    public Envelope? ToEnvelope()
    {
        CloseBefore(places);
        return Envelope.OfMeans([.. means]);
    }

    /// <summary>Adds a block; blocks come in their order.</summary>
    /// <param name="passed">Its samples behind the filter for pops.</param>
    /// <param name="start">Timeline index of the first.</param>
    public void Add(ReadOnlySpan<double> passed, long start)
    {
        Span<double> four = stackalloc double[RunSums.Runs];
        for (int i = 0; i < passed.Length;)
        {
            int place = PlaceOf(start + i);
            CloseBefore(place);
            int length = (int)Math.Min(passed.Length, FirstOf(place + 1) - start) - i;
            if (AreFourAlike(place, length, start + i, start + passed.Length))
            {
                RunSums.OfMagnitudes(passed[i..], length, four);
                foreach (double total in four)
                {
                    means.Add(total / length);
                }

                i += RunSums.Runs * length;
                continue;
            }

            foreach (double value in passed.Slice(i, length))
            {
                sum += Math.Abs(value);
            }

            count += length;
            i += length;
        }
    }

    /// <summary>Closes the place that is open, and leaves those empty that were passed over.</summary>
    private void CloseBefore(int place)
    {
        while (means.Count < place)
        {
            means.Add(count == 0 ? double.NaN : sum / count);
            (sum, count) = (0, 0);
        }
    }

    /// <summary>Whether four places that nothing was added to lie whole in a block and are equally long.</summary>
    private bool AreFourAlike(int place, int length, long from, long end)
    {
        if (count != 0 || from + (RunSums.Runs * length) > end)
        {
            return false;
        }

        for (int next = 1; next <= RunSums.Runs; next++)
        {
            if (FirstOf(place + next) != from + (next * length))
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
