namespace ChannelAudit.Reports.Reviewing;

/// <summary>Which cells are to be looked at.</summary>
public enum ReviewScope
{
    /// <summary>Those that the rules could not settle.</summary>
    Questionable,

    /// <summary>Those, and behind them the rejected ones.</summary>
    Flagged,

    /// <summary>Every cell.</summary>
    All,
}
