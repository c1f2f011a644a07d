using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Measures;

/// <summary>Where on a channel pops are possible: keeps the largest high-passed value of every 0.1 s, and how large nearly all values are.</summary>
/// <remarks>A pop must be twice the 99th percentile of |y| over the whole channel; below that it can be the muscle's own.</remarks>
public sealed class PopScreen
{
    private const double CellSeconds = 0.1;
    private const double UsualShare = 0.99;
    private const double TimesUsual = 2;

    // Enough to tell a percentile.
    private const int CountEvery = 4;

    private readonly int cell;
    private readonly MagnitudeHistogram sizes = new();
    private readonly List<(long Start, int FirstCell)> blocks = [];
    private readonly Column<float> largest = new();

    /// <summary>Starts at a rate.</summary>
    public PopScreen(double rateHz)
    {
        cell = (int)Math.Max(1, CellSeconds * rateHz);
    }

    /// <summary>The least height of a pop.</summary>
    public double LeastHeight => TimesUsual * sizes.Quantile(UsualShare);

    /// <summary>Adds a block.</summary>
    /// <param name="passed">Its samples behind the filter.</param>
    /// <param name="start">Timeline index of the first.</param>
    public void Add(ReadOnlySpan<double> passed, long start)
    {
        blocks.Add((start, largest.Count));
        for (int from = 0; from < passed.Length; from += cell)
        {
            (double least, double greatest) = Extremes.Of(passed.Slice(from, Math.Min(cell, passed.Length - from)));
            largest.Add((float)Math.Max(-least, greatest));
        }

        for (int i = 0; i < passed.Length; i += CountEvery)
        {
            sizes.Add(passed[i]);
        }
    }

    /// <summary>The stretches that hold a value as high as a pop must be, those less than a second apart joined.</summary>
    public SampleRanges Places()
    {
        SampleRanges places = new(10L * cell);
        double least = LeastHeight * (1 - 1e-6);
        for (int block = 0; block < blocks.Count; block++)
        {
            int end = block + 1 < blocks.Count ? blocks[block + 1].FirstCell : largest.Count;
            for (int i = blocks[block].FirstCell; i < end && least > 0; i++)
            {
                if (largest[i] >= least)
                {
                    long from = blocks[block].Start + ((long)(i - blocks[block].FirstCell) * cell);
                    places.Add(from, from + cell);
                }
            }
        }

        return places;
    }
}
