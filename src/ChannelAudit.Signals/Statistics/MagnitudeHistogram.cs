namespace ChannelAudit.Signals.Statistics;

/// <summary>Counts values by their size, in steps of 1/128 of it, so that quantiles of a long stretch need no copy of it.</summary>
public sealed class MagnitudeHistogram
{
    // Of the 32 bits of a single-precision number: the sign goes, exponent and 7 bits behind the point stay.
    private const int Dropped = 16;

    private readonly int[] counts = new int[(int.MaxValue >> Dropped) + 1];

    /// <summary>Values counted.</summary>
    public long Total { get; private set; }

    /// <summary>Counts the size of a value; its sign does not matter.</summary>
    public void Add(double value)
    {
        counts[(BitConverter.SingleToInt32Bits((float)value) & int.MaxValue) >> Dropped]++;
        Total++;
    }

    /// <summary>The size that a share of the values does not exceed: the upper edge of its step.</summary>
    /// <param name="probability">From 0 to 1.</param>
    /// <returns>0 when nothing was counted.</returns>
    public double Quantile(double probability)
    {
        long below = (long)Math.Ceiling(probability * Total);
        long seen = 0;
        for (int bin = 0; bin < counts.Length && Total > 0; bin++)
        {
            seen += counts[bin];
            if (counts[bin] > 0 && seen >= below)
            {
                return bin == 0 ? 0 : BitConverter.Int32BitsToSingle((bin + 1) << Dropped);
            }
        }

        return 0;
    }
}
