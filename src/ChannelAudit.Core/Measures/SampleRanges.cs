namespace ChannelAudit.Measures;

/// <summary>Ranges of samples on a channel's time axis, kept in order and joined where they touch or overlap.</summary>
public sealed class SampleRanges
{
    private readonly List<(long From, long To)> ranges = [];
    private readonly long joinWithin;

    /// <summary>Starts without ranges.</summary>
    /// <param name="joinWithin">Ranges that lie at most this many samples apart are joined.</param>
    public SampleRanges(long joinWithin = 0) => this.joinWithin = joinWithin;

    /// <summary>The ranges in order.</summary>
    public IReadOnlyList<(long From, long To)> All => ranges;

    /// <summary>Samples in all ranges.</summary>
    public long Total => ranges.Sum(range => range.To - range.From);

    /// <summary>The longest range in samples.</summary>
    public long Longest => ranges.Count == 0 ? 0 : ranges.Max(range => range.To - range.From);

    /// <summary>Adds a range; ranges may come slightly out of order.</summary>
    public void Add(long from, long to)
    {
        int at = ranges.Count;
        while (at > 0 && ranges[at - 1].To + joinWithin >= from)
        {
            at--;
        }

        int end = at;
        while (end < ranges.Count && ranges[end].From <= to + joinWithin)
        {
            from = Math.Min(from, ranges[end].From);
            to = Math.Max(to, ranges[end].To);
            end++;
        }

        ranges.RemoveRange(at, end - at);
        ranges.Insert(at, (from, to));
    }

    /// <summary>Samples of the ranges inside a span, and the longest part of one inside it.</summary>
    public (long Total, long Longest) Within(long from, long to)
    {
        long total = 0;
        long longest = 0;
        for (int i = FirstEndingAfter(from); i < ranges.Count && ranges[i].From < to; i++)
        {
            long part = Math.Min(to, ranges[i].To) - Math.Max(from, ranges[i].From);
            total += part;
            longest = Math.Max(longest, part);
        }

        return (total, longest);
    }

    /// <summary>Whether any range meets a span.</summary>
    public bool Meets(long from, long to)
    {
        int at = FirstEndingAfter(from);
        return at < ranges.Count && ranges[at].From < to;
    }

    private int FirstEndingAfter(long index)
    {
        int low = 0;
        int high = ranges.Count;
        while (low < high)
        {
            int middle = (low + high) >>> 1;
            if (ranges[middle].To > index)
            {
                high = middle;
            }
            else
            {
                low = middle + 1;
            }
        }

        return low;
    }
}
