namespace ChannelAudit.Reports.Reviewing;

/// <summary>How far a decision on the page reaches.</summary>
public enum ReviewReach
{
    /// <summary>The trial in the channel that is shown.</summary>
    Trial,

    /// <summary>The channel as a whole.</summary>
    Channel,

    /// <summary>The trial, and every undecided one of its channel that is like it.</summary>
    Alike,
}
