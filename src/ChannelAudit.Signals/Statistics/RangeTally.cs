namespace ChannelAudit.Signals.Statistics;

/// <summary>Counts arrangements whose range is at least the observed one, and those with the largest range of all.</summary>
internal struct RangeTally(double observed)
{
    // Sums in another order differ in their last digits; shares of counts never lie this close together.
    private const double Slack = 1e-9;

    private double _largest = double.NegativeInfinity;
    private int _atLargest;

    /// <summary>Arrangements counted.</summary>
    public int Count { get; private set; }

    /// <summary>Those at least as large as the observed one.</summary>
    public int AtLeast { get; private set; }

    /// <summary>Counts one.</summary>
    public void Add(double range)
    {
        Count++;
        AtLeast += range >= observed - Slack ? 1 : 0;
        if (range > _largest + Slack)
        {
            (_largest, _atLargest) = (range, 1);
        }
        else if (range >= _largest - Slack)
        {
            _atLargest++;
        }
    }

    /// <summary>The result when all arrangements were counted.</summary>
    public readonly PermutationResult Exact() => new(observed, (double)AtLeast / Count, Count, true, (double)_atLargest / Count);

    /// <summary>The result when arrangements were drawn: (b + 1)/(m + 1), since the observed one is one of them (Phipson and Smyth 2010).</summary>
    public readonly PermutationResult Drawn()
    {
        // Where the largest range comes up often, no arrangement can be rare.
        var smallest = observed > _largest + Slack ? 1 : _atLargest + (observed >= _largest - Slack ? 1 : 0);
        return new(observed, (AtLeast + 1.0) / (Count + 1), Count, false, Math.Max(1.0, smallest) / (Count + 1));
    }
}
