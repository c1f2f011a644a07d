namespace ChannelAudit.Signals.Statistics;

/// <summary>Counts the pairs of a sequence in which the later value is the smaller one.</summary>
/// <param name="length">Length of the sequences to come.</param>
internal sealed class InversionCounter(int length)
{
    private const int Block = 8;

    private readonly double[] _spare = new double[length];

    /// <summary>Counts by merge sort.</summary>
    /// <param name="values">As many values as announced; sorted in the end.</param>
    /// <returns>Number of pairs i before j with values[j] below values[i].</returns>
    public long Count(double[] values)
    {
        var inversions = 0L;
        for (var start = 0; start < values.Length; start += Block)
        {
            inversions += SortBlock(values.AsSpan(start, Math.Min(Block, values.Length - start)));
        }

        var (source, target) = (values, _spare);
        for (var width = Block; width < values.Length; width *= 2)
        {
            for (var start = 0; start < values.Length; start += 2 * width)
            {
                var middle = Math.Min(start + width, values.Length);
                var end = Math.Min(middle + width, values.Length);
                inversions += Merge(source.AsSpan(start, middle - start), source.AsSpan(middle, end - middle), target.AsSpan(start, end - start));
            }

            (source, target) = (target, source);
        }

        if (!ReferenceEquals(source, values))
        {
            source.AsSpan().CopyTo(values);
        }

        return inversions;
    }

    private static int SortBlock(Span<double> block)
    {
        var moves = 0;
        for (var at = 1; at < block.Length; at++)
        {
            var moving = block[at];
            var to = at;
            for (; to > 0 && block[to - 1] > moving; to--)
            {
                block[to] = block[to - 1];
                moves++;
            }

            block[to] = moving;
        }

        return moves;
    }

    private static long Merge(ReadOnlySpan<double> left, ReadOnlySpan<double> right, Span<double> merged)
    {
        var inversions = 0L;
        int l = 0, r = 0, at = 0;
        while (l < left.Length && r < right.Length)
        {
            // One branch-free step: which side goes first is as good as random.
            var (a, b) = (left[l], right[r]);
            var takeRight = b < a ? 1 : 0;
            merged[at++] = b < a ? b : a;
            inversions += takeRight * (left.Length - l);
            r += takeRight;
            l += 1 - takeRight;
        }

        left[l..].CopyTo(merged[at..]);
        right[r..].CopyTo(merged[(at + left.Length - l)..]);
        return inversions;
    }
}
