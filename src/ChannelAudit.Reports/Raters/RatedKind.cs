namespace ChannelAudit.Reports.Raters;

/// <summary>What labels are about.</summary>
public enum RatedKind
{
    /// <summary>Single trials of a channel.</summary>
    Trials,

    /// <summary>Whole channels.</summary>
    Channels,
}
