namespace ChannelAudit.Impedance;

/// <summary>How a contact reads, from good to worst. Of readings only: it never changes a signal's verdict.</summary>
public enum ImpedanceGrade
{
    /// <summary>Below 5 kΩ.</summary>
    Good,

    /// <summary>From 5 to 20 kΩ, both included: gel still soaks in; wait, and measure again.</summary>
    Wait,

    /// <summary>Of a site only: its readings are too low to be true or do not fit together, so that none can be taken at its word.</summary>
    Doubtful,

    /// <summary>Above 20 kΩ: the contact has to be made again.</summary>
    Redo,
}
