namespace ChannelAudit.Trends;

/// <summary>How values of a measure are compared.</summary>
public enum TrendScale
{
    /// <summary>By ratio: positive, and looked at as logarithms.</summary>
    Level,

    /// <summary>By difference.</summary>
    Difference,

    /// <summary>Yes or no, counted.</summary>
    Share,
}
