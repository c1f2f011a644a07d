using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Measures;

/// <summary>Counts samples at the rails and the longest run of them.</summary>
/// <remarks>A sample within one step of a rail is at it; single samples count, since at 1000 Hz most clipped peaks are one sample.</remarks>
public sealed class ClippingCount
{
    private const int Block = 256;

    private readonly Rails rails;
    private readonly SampleRanges? places;
    private long runStart = -1;

    /// <summary>Starts counting.</summary>
    /// <param name="rails">The channel's rails.</param>
    /// <param name="places">Receives where the runs are, or null when only their number matters.</param>
    public ClippingCount(Rails rails, SampleRanges? places = null)
    {
        this.rails = rails;
        this.places = places;
    }

    /// <summary>Samples at a rail.</summary>
    public long Samples { get; private set; }

    /// <summary>The longest run at a rail, in samples.</summary>
    public long LongestRun { get; private set; }

    /// <summary>Adds samples; consecutive calls continue one another unless <see cref="Break"/> comes between.</summary>
    /// <param name="samples">The samples.</param>
    /// <param name="offset">Timeline index of the first.</param>
    /// <returns>The least and the greatest of them, which are needed here and by others.</returns>
    /// <exception cref="ArgumentException">When there is no sample.</exception>
    public (double Least, double Greatest) Add(ReadOnlySpan<double> samples, long offset)
    {
        if (!rails.AnyKnown || samples.IsEmpty)
        {
            return Extremes.Of(samples);
        }

        (double least, double greatest) = (double.PositiveInfinity, double.NegativeInfinity);
        for (int start = 0; start < samples.Length; start += Block)
        {
            ReadOnlySpan<double> block = samples.Slice(start, Math.Min(Block, samples.Length - start));
            (double low, double high) = Extremes.Of(block);
            (least, greatest) = (Math.Min(least, low), Math.Max(greatest, high));
            if (low > rails.LowerEdge && high < rails.UpperEdge)
            {
                EndRun(offset + start);
            }
            else
            {
                AddBlock(block, offset + start);
            }
        }

        return (least, greatest);
    }

    /// <summary>Ends what runs at the end of an unbroken stretch.</summary>
    /// <param name="end">Timeline index behind its last sample.</param>
    public void Break(long end) => EndRun(end);

    private void AddBlock(ReadOnlySpan<double> block, long offset)
    {
        for (int i = 0; i < block.Length; i++)
        {
            if (!rails.Holds(block[i]))
            {
                EndRun(offset + i);
            }
            else
            {
                Samples++;
                runStart = runStart < 0 ? offset + i : runStart;
            }
        }
    }

    private void EndRun(long end)
    {
        if (runStart >= 0)
        {
            LongestRun = Math.Max(LongestRun, end - runStart);
            places?.Add(runStart, end);
            runStart = -1;
        }
    }
}
