namespace ChannelAudit.Signals.Trends;

/// <summary>How a level changed.</summary>
public enum ChangeKind
{
    /// <summary>From one level to another within a few blocks.</summary>
    Step,

    /// <summary>Slowly, from one level to another.</summary>
    Drift,

    /// <summary>For a while, and back.</summary>
    Episode,
}
