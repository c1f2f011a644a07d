namespace ChannelAudit.Views;

/// <summary>What two sites did in a second.</summary>
public enum PairState
{
    /// <summary>Neither clearly quiet nor a contraction.</summary>
    Other,

    /// <summary>Both quiet.</summary>
    Rest,

    /// <summary>A contraction of the first.</summary>
    ActiveA,

    /// <summary>A contraction of the second.</summary>
    ActiveB,

    /// <summary>A contraction of both.</summary>
    ActiveBoth,
}
