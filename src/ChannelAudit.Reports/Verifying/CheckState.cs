namespace ChannelAudit.Reports.Verifying;

/// <summary>What came of a check.</summary>
public enum CheckState
{
    /// <summary>It is as it should be.</summary>
    Ok,

    /// <summary>It is not.</summary>
    Differs,

    /// <summary>Nobody looked, and the text says why: never the same as good.</summary>
    NotChecked,
}
