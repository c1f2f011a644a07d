namespace ChannelAudit.Decisions;

/// <summary>A decision and what has become of it.</summary>
/// <param name="Decision">The decision.</param>
/// <param name="State">What has become of it.</param>
/// <param name="Note">In words: why it is stale, which line took its place or took it back, what is computed otherwise now; empty when there is nothing to say.</param>
/// <param name="IsFlagged">Whether it is stale, or holds although what is computed has changed since: a person should look again.</param>
public sealed record StatedDecision(Decision Decision, DecisionState State, string Note, bool IsFlagged = false);
