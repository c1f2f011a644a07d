namespace ChannelAudit.Signals.Statistics;

/// <summary>How much two different answers count as agreement.</summary>
public enum KappaWeights
{
    /// <summary>Only the same answer agrees: 1 for the same, 0 for any other.</summary>
    Unweighted,

    /// <summary>Ordered answers: 1 − |i − j| / (number of answers − 1).</summary>
    Linear,
}
