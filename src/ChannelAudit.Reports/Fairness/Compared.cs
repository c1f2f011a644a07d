namespace ChannelAudit.Reports.Fairness;

/// <summary>Between what exclusions are compared.</summary>
public enum Compared
{
    /// <summary>Conditions: every participant should have all of them.</summary>
    Condition,

    /// <summary>Groups: every participant is in one.</summary>
    Group,

    /// <summary>Channels: every participant should have all of them.</summary>
    Channel,
}
