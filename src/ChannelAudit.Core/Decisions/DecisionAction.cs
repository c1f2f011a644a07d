namespace ChannelAudit.Decisions;

/// <summary>What a line of the ledger does.</summary>
public enum DecisionAction
{
    /// <summary>Gives a verdict over the computed one.</summary>
    Decide,

    /// <summary>Takes an earlier decision back; what was before it holds again.</summary>
    Withdraw,
}
