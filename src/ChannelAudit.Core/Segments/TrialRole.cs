namespace ChannelAudit.Segments;

/// <summary>What the muscle was asked to do during a trial; known from labels that are not conditions.</summary>
public enum TrialRole
{
    /// <summary>An ordinary trial of some condition.</summary>
    Scored,

    /// <summary>Rest: the label is one of the setup's rest labels.</summary>
    Rest,

    /// <summary>A voluntary contraction asked for: the label is some site's task.</summary>
    Task,
}
