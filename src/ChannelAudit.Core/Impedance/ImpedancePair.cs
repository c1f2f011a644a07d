namespace ChannelAudit.Impedance;

/// <summary>Which two contacts a reading lies between.</summary>
public enum ImpedancePair
{
    /// <summary>The two electrodes of a site.</summary>
    AToB,

    /// <summary>The first electrode of a site and the ground.</summary>
    AToGround,

    /// <summary>The second electrode of a site and the ground.</summary>
    BToGround,

    /// <summary>An electrode of one site and one of another: the reading that shows gel between sites.</summary>
    Across,
}
