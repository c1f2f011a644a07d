namespace ChannelAudit.Setup;

/// <summary>How many trials of a condition the protocol has.</summary>
/// <param name="Label">The condition: the label of its trials.</param>
/// <param name="Count">How many.</param>
public readonly record struct ExpectedTrials(string Label, int Count);
