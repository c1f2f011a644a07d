namespace ChannelAudit.Setup;

/// <summary>Where trials come from.</summary>
public enum TrialSource
{
    /// <summary>Annotations of the recording.</summary>
    Annotations,

    /// <summary>An events table.</summary>
    Events,

    /// <summary>A trigger channel.</summary>
    Trigger,

    /// <summary>Blocks of 10 s.</summary>
    Blocks,
}
