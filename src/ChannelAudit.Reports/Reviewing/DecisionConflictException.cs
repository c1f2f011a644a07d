using ChannelAudit.Decisions;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>Somebody has decided about a cell, or taken a decision about it back, since it was shown; nothing was written.</summary>
public sealed class DecisionConflictException : Exception
{
    /// <summary>Names what came between.</summary>
    /// <param name="other">The latest line about the same.</param>
    /// <param name="withdrawn">The decision that it takes back; null unless it does.</param>
    /// <param name="seen">Lines of the ledger now: who has been told decides by them.</param>
    public DecisionConflictException(Decision other, Decision? withdrawn, int seen)
        : base("somebody has decided about this cell since it was shown")
    {
        Other = other;
        Withdrawn = withdrawn;
        Seen = seen;
    }

    /// <summary>The latest line about the same.</summary>
    public Decision Other { get; }

    /// <summary>The decision that it takes back; null unless it does.</summary>
    public Decision? Withdrawn { get; }

    /// <summary>Lines of the ledger now.</summary>
    public int Seen { get; }
}
