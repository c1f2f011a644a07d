namespace ChannelAudit.Trends;

/// <summary>What recordings are put together by, from the broadest to the narrowest.</summary>
public enum TrendBy
{
    /// <summary>All of them.</summary>
    Archive,

    /// <summary>One lab.</summary>
    Lab,

    /// <summary>One amplifier of a lab.</summary>
    Amplifier,

    /// <summary>One site in a lab.</summary>
    Site,

    /// <summary>One electrode of a lab.</summary>
    Electrode,
}
