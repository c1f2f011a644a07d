namespace ChannelAudit.Reports.Fairness;

/// <summary>What a comparison of exclusions says.</summary>
public enum FairnessAnswer
{
    /// <summary>Nothing could be compared, or no test could have found a difference: not the same as even.</summary>
    NotAssessed,

    /// <summary>No sign of a difference; a small one can still be there.</summary>
    NoSign,

    /// <summary>A probability below 0.05, or shares ten points and more apart.</summary>
    StandsOut,
}
