using System.Collections.Immutable;

namespace ChannelAudit.Measures;

/// <summary>Neighbouring bins of a spectrum.</summary>
/// <param name="From">First bin.</param>
/// <param name="To">Last bin.</param>
public readonly record struct BinRange(int From, int To)
{
    /// <summary>Number of bins.</summary>
    public int Count => To - From + 1;

    /// <summary>The bins of a span for which something holds, as ranges in order.</summary>
    public static ImmutableArray<BinRange> Where(int first, int last, Func<int, bool> holds)
    {
        ImmutableArray<BinRange>.Builder ranges = ImmutableArray.CreateBuilder<BinRange>();
        int from = -1;
        for (int bin = first; bin <= last + 1; bin++)
        {
            bool isIn = bin <= last && holds(bin);
            if (isIn && from < 0)
            {
                from = bin;
            }
            else if (!isIn && from >= 0)
            {
                ranges.Add(new BinRange(from, bin - 1));
                from = -1;
            }
        }

        return ranges.ToImmutable();
    }
}
