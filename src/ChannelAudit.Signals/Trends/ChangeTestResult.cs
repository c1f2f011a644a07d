namespace ChannelAudit.Signals.Trends;

/// <summary>What <see cref="ChangeTest"/> found.</summary>
/// <param name="P">Probability of as wide a range where nothing changes.</param>
/// <param name="Statistic">The range of the cumulative sum, in units of its own spread.</param>
/// <param name="Correlation">r of neighbouring blocks, 0 to 0.9.</param>
/// <param name="Blocks">How many blocks have a value.</param>
public readonly record struct ChangeTestResult(double P, double Statistic, double Correlation, int Blocks);
