namespace ChannelAudit.Setup;

/// <summary>Which change of a trigger channel is an event.</summary>
public enum TriggerEdge
{
    /// <summary>A code begins: the value leaves the base level, or goes from one code to another.</summary>
    Rising,

    /// <summary>A code ends; the event has its label.</summary>
    Falling,

    /// <summary>Every change, that to the base level too; the event has the label of what begins.</summary>
    Both,

    /// <summary>From the begin of a code to its end: an event with a duration.</summary>
    Held,
}
