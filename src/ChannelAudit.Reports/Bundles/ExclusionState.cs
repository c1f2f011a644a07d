namespace ChannelAudit.Reports.Bundles;

/// <summary>What came of checking an exclusion against its samples.</summary>
public enum ExclusionState
{
    /// <summary>The samples give the numbers, and the numbers reach the limits.</summary>
    Confirmed,

    /// <summary>They do not.</summary>
    Differs,

    /// <summary>It rests on more than the samples of its window.</summary>
    NotCheckable,
}
