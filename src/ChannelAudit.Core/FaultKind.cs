namespace ChannelAudit;

/// <summary>What kind of input was at fault.</summary>
public enum FaultKind
{
    /// <summary>Wrong usage, setup, criteria, events or output folder: exit code 2.</summary>
    Usage,

    /// <summary>A recording that cannot be read: exit code 3.</summary>
    Recording,
}
