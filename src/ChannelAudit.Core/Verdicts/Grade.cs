namespace ChannelAudit.Verdicts;

/// <summary>How good something is, from good to bad; the worst wins.</summary>
public enum Grade
{
    /// <summary>Can be scored.</summary>
    Pass,

    /// <summary>A person should look.</summary>
    Questionable,

    /// <summary>Should not be scored.</summary>
    Reject,
}
