namespace ChannelAudit.Pilot;

/// <summary>What happens in a part of the protocol.</summary>
public enum ProtocolPartKind
{
    /// <summary>The face is at rest.</summary>
    Rest,

    /// <summary>One muscle contracts.</summary>
    Task,

    /// <summary>The lead wires of one site are tapped.</summary>
    Taps,
}
