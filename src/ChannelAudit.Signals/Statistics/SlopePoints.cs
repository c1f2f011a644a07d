namespace ChannelAudit.Signals.Statistics;

/// <summary>Points in ascending order of x, and what can be counted and listed of the slopes between them.</summary>
internal sealed class SlopePoints
{
    private readonly double[] _x;
    private readonly double[] _y;
    private readonly double[] _heights;
    private readonly InversionCounter _inversions;

    /// <summary>Copies the points.</summary>
    /// <param name="x">Ascending values, ties allowed.</param>
    /// <param name="y">As many values.</param>
    /// <exception cref="ArgumentException">The values of x do not ascend or are all equal, or a value is not finite.</exception>
    public SlopePoints(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        RequireAscending(x);
        _x = x.ToArray();
        _y = y.ToArray();
        _heights = new double[x.Length];
        _inversions = new InversionCounter(x.Length);
        Pairs = ((long)x.Length * (x.Length - 1) / 2) - OrderTies();
        SlopeScale = (_y.Max() - _y.Min()) / (_x[^1] - _x[0]);
        if (Pairs == 0 || !double.IsFinite(SlopeScale))
        {
            throw new ArgumentException("A slope needs two different x and finite values.", nameof(x));
        }
    }

    /// <summary>Gets the number of pairs with different x.</summary>
    public long Pairs { get; }

    /// <summary>Gets the range of y over the range of x: 0 for a constant, else the measure of what is a tiny slope.</summary>
    public double SlopeScale { get; }

    /// <summary>Gets the number of slopes that is little work to write down.</summary>
    public long FewSlopes => 8L * _x.Length;

    /// <summary>Counts the pairs with a slope below a value.</summary>
    public long CountBelow(double slope)
    {
        SetHeights(slope);
        return _inversions.Count(_heights);
    }

    /// <summary>Gives the median slope of a few of the points, and a quarter of the quartile range of their slopes.</summary>
    public (double Slope, double Width) ThinnedSlope(int points)
    {
        var slopes = new List<double>(points * points / 2);
        var step = Math.Max(1, _x.Length / points);
        for (var i = 0; i < _x.Length; i += step)
        {
            for (var j = i + step; j < _x.Length; j += step)
            {
                if (_x[j] > _x[i])
                {
                    slopes.Add((_y[j] - _y[i]) / (_x[j] - _x[i]));
                }
            }
        }

        var all = slopes.ToArray();
        return all.Length == 0
            ? (0, SlopeScale)
            : (Quantiles.MedianInPlace(all), (Quantiles.Type7InPlace(all, 0.75) - Quantiles.Type7InPlace(all, 0.25)) / 4);
    }

    /// <summary>Lists the slopes of the pairs that change their order between two slopes.</summary>
    /// <param name="low">Lower slope, which may be among them.</param>
    /// <param name="high">Upper slope, which is not.</param>
    /// <param name="most">Where to stop.</param>
    /// <returns>Slopes in no particular order.</returns>
    public double[] SlopesBetween(double low, double high, long most)
    {
        SetHeights(low);
        var order = Enumerable.Range(0, _x.Length).ToArray();
        Array.Sort((double[])_heights.Clone(), order);
        OrderEqualHeightsByIndex(order);
        SetHeights(high);
        var slopes = new List<double>();
        for (var at = 1; at < order.Length && slopes.Count < most; at++)
        {
            var moving = order[at];
            var to = at;
            for (; to > 0 && _heights[order[to - 1]] > _heights[moving]; to--)
            {
                var passed = order[to - 1];
                order[to] = passed;
                if (passed < moving && _x[passed] < _x[moving])
                {
                    slopes.Add((_y[moving] - _y[passed]) / (_x[moving] - _x[passed]));
                }
            }

            order[to] = moving;
        }

        return [.. slopes];
    }

    private static void RequireAscending(ReadOnlySpan<double> x)
    {
        for (var i = 1; i < x.Length; i++)
        {
            if (!(x[i] >= x[i - 1]))
            {
                throw new ArgumentException("A long input needs ascending x.", nameof(x));
            }
        }
    }

    /// <summary>Sorts y where x is equal, so that such pairs never count as inverted, and counts these pairs.</summary>
    private long OrderTies()
    {
        var ties = 0L;
        for (var first = 0; first < _x.Length;)
        {
            var next = first + 1;
            while (next < _x.Length && _x[next] == _x[first])
            {
                next++;
            }

            Array.Sort(_y, first, next - first);
            ties += (long)(next - first) * (next - first - 1) / 2;
            first = next;
        }

        return ties;
    }

    /// <summary>Sets heights above a line through the first point.</summary>
    private void SetHeights(double slope)
    {
        for (var i = 0; i < _x.Length; i++)
        {
            _heights[i] = (_y[i] - _y[0]) - (slope * (_x[i] - _x[0]));
        }
    }

    private void OrderEqualHeightsByIndex(int[] order)
    {
        for (var first = 0; first < order.Length;)
        {
            var next = first + 1;
            while (next < order.Length && _heights[order[next]] == _heights[order[first]])
            {
                next++;
            }

            Array.Sort(order, first, next - first);
            first = next;
        }
    }
}
