namespace ChannelAudit.Reports.Fairness;

/// <summary>What is counted as excluded or not.</summary>
public enum CountedThing
{
    /// <summary>Scored trials, each once a channel.</summary>
    Trials,

    /// <summary>Channels of recordings.</summary>
    Channels,
}
