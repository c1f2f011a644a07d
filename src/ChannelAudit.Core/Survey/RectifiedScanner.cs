using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Signals.Filters;

namespace ChannelAudit.Survey;

/// <summary>Takes the mean rectified amplitude of a window while its blocks go by.</summary>
/// <remarks>A window's own samples only: the filter starts settled on the first sample of each piece.</remarks>
internal sealed class RectifiedScanner
{
    private readonly RectifiedFilter? filter;
    private readonly SampleRanges pops;
    private double[] magnitudes = [];
    private double sum;
    private long count;
    private double atPops;
    private long countAtPops;

    /// <summary>Prepares to scan windows of a channel.</summary>
    /// <param name="scoring">The filter of scoring.</param>
    /// <param name="rateHz">Samples per second.</param>
    /// <param name="pops">The 50 ms on either side of every pop.</param>
    public RectifiedScanner(ScoringFilter scoring, double rateHz, SampleRanges pops)
    {
        ImmutableArray<SecondOrderSection> sections = scoring.Sections(rateHz);
        filter = sections.IsEmpty ? null : new RectifiedFilter(sections);
        this.pops = pops;
    }

    /// <summary>Starts a window.</summary>
    public void Start()
    {
        filter?.Restart();
        (sum, count, atPops, countAtPops) = (0, 0, 0, 0);
    }

    /// <summary>Adds the next block.</summary>
    public void Add(SampleBlock block)
    {
        if (filter is null)
        {
            return;
        }

        if (magnitudes.Length < block.Samples.Length)
        {
            magnitudes = new double[block.Samples.Length];
        }

        Span<double> passed = magnitudes.AsSpan(0, block.Samples.Length);
        sum += filter.Filter(block.Samples.Span, passed);
        count += passed.Length;
        if (pops.Meets(block.Start, block.End))
        {
            AddPops(block, passed);
        }

        if (block.EndsPiece)
        {
            filter.Restart();
        }
    }

    /// <summary>What the blocks showed.</summary>
    public RectifiedScan Finish() => count == 0
        ? default
        : new RectifiedScan(sum / count, count > countAtPops ? (sum - atPops) / (count - countAtPops) : null);

    private void AddPops(SampleBlock block, ReadOnlySpan<double> passed)
    {
        foreach ((long from, long to) in pops.All)
        {
            long first = Math.Max(from, block.Start);
            long end = Math.Min(to, block.End);
            for (long at = first; at < end; at++)
            {
                atPops += passed[(int)(at - block.Start)];
                countAtPops++;
            }
        }
    }
}
