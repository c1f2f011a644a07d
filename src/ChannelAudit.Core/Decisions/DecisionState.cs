namespace ChannelAudit.Decisions;

/// <summary>What has become of a decision.</summary>
public enum DecisionState
{
    /// <summary>It holds.</summary>
    InForce,

    /// <summary>A later one about the same took its place.</summary>
    Superseded,

    /// <summary>A later line took it back.</summary>
    Withdrawn,

    /// <summary>What it was about has changed since or is gone: it is not applied.</summary>
    Stale,
}
