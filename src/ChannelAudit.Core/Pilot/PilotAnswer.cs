namespace ChannelAudit.Pilot;

/// <summary>What a pilot recording answers to "can we start?".</summary>
public enum PilotAnswer
{
    /// <summary>Every site passes.</summary>
    Start,

    /// <summary>Nothing is rejected, but something is in doubt: a person decides.</summary>
    Doubtful,

    /// <summary>At least one site could not be scored as it is.</summary>
    NotYet,

    /// <summary>Too little was recorded to say either: a few seconds, a task that is missing, nothing that could be judged.</summary>
    CannotSay,
}
