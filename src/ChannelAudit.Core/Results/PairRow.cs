namespace ChannelAudit.Results;

/// <summary>One row of <c>pairs.tsv</c>.</summary>
/// <param name="Trial">Trial number, <c>all</c>, <c>rest</c>, <c>active_a</c> or <c>active_b</c>.</param>
/// <param name="Rho">Zero-lag coherency over 30 to 250 Hz.</param>
/// <param name="RhoHigh">The same over 300 to 450 Hz.</param>
/// <param name="Distance">Normalised electrical distance over 30 to 250 Hz.</param>
/// <param name="Coherence">Median magnitude-squared coherence over 30 to 250 Hz.</param>
/// <param name="GainAb">Re S_AB over S_AA.</param>
/// <param name="GainBa">Re S_AB over S_BB.</param>
/// <param name="Note">Why values are missing, or null.</param>
public readonly record struct PairRow(
    string Trial, double? Rho, double? RhoHigh, double? Distance, double? Coherence, double? GainAb, double? GainBa, string? Note = null);
