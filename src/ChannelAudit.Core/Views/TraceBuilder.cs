using System.Runtime.InteropServices;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Views;

/// <summary>Gathers the extremes of columns while blocks of samples go by.</summary>
internal sealed class TraceBuilder
{
    private readonly long start;
    private readonly long length;
    private readonly double[] least;
    private readonly double[] greatest;

    /// <summary>Starts without samples.</summary>
    /// <param name="start">Timeline index of the first sample of the first column.</param>
    /// <param name="end">Timeline index behind the last sample of the last column.</param>
    /// <param name="columns">Columns wanted; there are no more than samples.</param>
    public TraceBuilder(long start, long end, int columns)
    {
        this.start = start;
        length = Math.Max(1, end - start);
        int count = (int)Math.Min(columns, length);
        least = new double[count];
        greatest = new double[count];
        least.AsSpan().Fill(double.NaN);
        greatest.AsSpan().Fill(double.NaN);
    }

    /// <summary>Adds consecutive samples; those outside the columns are left out.</summary>
    /// <param name="samples">The samples.</param>
    /// <param name="offset">Timeline index of the first.</param>
    public void Add(ReadOnlySpan<double> samples, long offset)
    {
        long at = Math.Max(offset, start);
        long end = Math.Min(offset + samples.Length, start + length);
        while (at < end)
        {
            int column = (int)((at - start) * least.Length / length);
            long next = Math.Min(end, EdgeOf(column + 1));
            (double low, double high) = Extremes.Of(samples[(int)(at - offset)..(int)(next - offset)]);

            // A number wins over NaN, unlike with Math.Min.
            least[column] = double.MinNumber(least[column], low);
            greatest[column] = double.MaxNumber(greatest[column], high);
            at = next;
        }
    }

    /// <summary>The trace.</summary>
    /// <param name="rateHz">Samples per second.</param>
    public Trace Finish(double rateHz) => new(
        start / rateHz,
        (start + length) / rateHz,
        ImmutableCollectionsMarshal.AsImmutableArray(least),
        ImmutableCollectionsMarshal.AsImmutableArray(greatest));

    // The first sample whose column is at least this one.
    private long EdgeOf(int column) => start + (((column * length) + least.Length - 1) / least.Length);
}
