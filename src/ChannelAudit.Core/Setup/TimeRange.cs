namespace ChannelAudit.Setup;

/// <summary>From the least to the greatest time allowed, both included.</summary>
/// <param name="FromS">The least, in s.</param>
/// <param name="ToS">The greatest, in s.</param>
public readonly record struct TimeRange(decimal FromS, decimal ToS)
{
    /// <summary>Whether a time is allowed; a millionth of a second more or less is no difference.</summary>
    public bool Holds(decimal seconds) => seconds >= FromS - 0.000_001m && seconds <= ToS + 0.000_001m;
}
