namespace ChannelAudit.Reports.Reviewing;

/// <summary>Whether the signal that is shown is the one that was audited.</summary>
public enum FileCheck
{
    /// <summary>No signal is shown: the folder of the recordings was not given.</summary>
    NoData,

    /// <summary>Its bytes are being looked at.</summary>
    Checking,

    /// <summary>The same bytes.</summary>
    Same,

    /// <summary>Other bytes.</summary>
    Differs,

    /// <summary>It is not there, or cannot be read.</summary>
    Missing,
}
