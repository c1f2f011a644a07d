namespace ChannelAudit.Impedance;

/// <summary>What readings can warn of, the most urgent first.</summary>
public enum ImpedanceWarningCode
{
    /// <summary>All readings are so high that they may be in Ω.</summary>
    UnitInDoubt,

    /// <summary>A reading across two sites says that something joins them.</summary>
    SitesJoined,

    /// <summary>The two electrodes of a site read as joined.</summary>
    PairJoined,

    /// <summary>An electrode reads as joined with the ground.</summary>
    GroundJoined,

    /// <summary>All readings of a site are too low for skin.</summary>
    TooLow,

    /// <summary>The ground, which all sites share, is not the same at all of them.</summary>
    GroundDiffers,

    /// <summary>No three contacts give such readings.</summary>
    Inconsistent,

    /// <summary>A reading has more than doubled, or fallen to less than half.</summary>
    Drifted,

    /// <summary>The two electrodes of a site differ: mains comes in.</summary>
    Imbalance,

    /// <summary>Waiting has not brought the reading below the limit.</summary>
    NotSettling,

    /// <summary>The three readings of a site are not of one moment; they are not solved.</summary>
    NotTogether,

    /// <summary>A reading of a site is missing.</summary>
    Incomplete,
}
