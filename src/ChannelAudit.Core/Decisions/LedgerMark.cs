namespace ChannelAudit.Decisions;

/// <summary>How far a ledger had grown: what outputs were made from. A ledger that was cut at the end of a line is found by it.</summary>
/// <param name="Lines">Its lines.</param>
/// <param name="Head">The SHA-256 of the last of them, or <see cref="LedgerChain.Start"/>.</param>
public sealed record LedgerMark(int Lines, string Head)
{
    /// <summary>Of a ledger without lines.</summary>
    public static LedgerMark None { get; } = new(0, LedgerChain.Start);
}
