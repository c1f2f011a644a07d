using System.Buffers;
using ChannelAudit.Signals.Filters;
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

    private readonly SecondOrderSection filter;
    private readonly int cell;
    private readonly MagnitudeHistogram sizes = new();
    private readonly List<(long Start, int FirstCell)> blocks = [];
    private readonly Column<float> largest = new();

    /// <summary>Starts at a rate.</summary>
    public PopScreen(double rateHz)
    {
        filter = PopFilter.At(rateHz);
        cell = (int)Math.Max(1, CellSeconds * rateHz);
    }

    /// <summary>The least height of a pop.</summary>
    public double LeastHeight => TimesUsual * sizes.Quantile(UsualShare);

    /// <summary>Adds a block.</summary>
    /// <param name="samples">Samples to warm up on, then those of the block.</param>
    /// <param name="carry">How many are to warm up on.</param>
    /// <param name="start">Timeline index of the first of the block.</param>
    public void Add(ReadOnlySpan<double> samples, int carry, long start)
    {
        int length = samples.Length - carry;
        double[] rented = ArrayPool<double>.Shared.Rent(length);
        try
        {
            Span<double> passed = rented.AsSpan(0, length);
            SettledHighPass.Filter(filter, samples, carry, passed);
            blocks.Add((start, largest.Count));
            for (int from = 0; from < length; from += cell)
            {
                (double least, double greatest) = Extremes.Of(passed.Slice(from, Math.Min(cell, length - from)));
                largest.Add((float)Math.Max(-least, greatest));
            }

            for (int i = 0; i < length; i += CountEvery)
            {
                sizes.Add(passed[i]);
            }
        }
        finally
        {
            ArrayPool<double>.Shared.Return(rented);
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
