namespace ChannelAudit.Measures;

/// <summary>Neighbouring bins of a spectrum.</summary>
/// <param name="From">First bin.</param>
/// <param name="To">Last bin.</param>
public readonly record struct BinRange(int From, int To)
{
    /// <summary>Number of bins.</summary>
    public int Count => To - From + 1;
}
