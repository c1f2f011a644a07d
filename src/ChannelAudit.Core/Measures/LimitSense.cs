namespace ChannelAudit.Measures;

/// <summary>On which side of a limit a measure is bad; the limit itself belongs to the bad side.</summary>
public enum LimitSense
{
    /// <summary>Bad at the limit and above.</summary>
    AtLeast,

    /// <summary>Bad when the magnitude is at the limit or above.</summary>
    AtLeastMagnitude,

    /// <summary>Bad at the limit and below.</summary>
    AtMost,
}
