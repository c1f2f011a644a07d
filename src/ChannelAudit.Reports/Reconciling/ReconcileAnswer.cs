namespace ChannelAudit.Reports.Reconciling;

/// <summary>What the audit says to a line of a list of exclusions.</summary>
public enum ReconcileAnswer
{
    /// <summary>The computed verdict is that of the list.</summary>
    Supported,

    /// <summary>It is questionable, or so bad only in part.</summary>
    Partly,

    /// <summary>Nothing in the audit speaks for it.</summary>
    NotSupported,

    /// <summary>The computed verdict is reject, and the list does not exclude it.</summary>
    RejectedButKept,

    /// <summary>The audit has no such recording, channel or trial.</summary>
    NoMatch,
}
