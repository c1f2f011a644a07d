namespace ChannelAudit.Reports.Bundles;

/// <summary>An exclusion with what came of checking it.</summary>
/// <param name="Exclusion">The exclusion.</param>
/// <param name="State">What came of it.</param>
/// <param name="Text">The numbers, what differs, or what it rests on.</param>
public sealed record ExclusionOutcome(Exclusion Exclusion, ExclusionState State, string Text);
