namespace ChannelAudit.Views;

/// <summary>What two channels share in one second.</summary>
/// <param name="AtS">The middle of the second, from the first stored sample.</param>
/// <param name="Rho">Correlation over 30 to 250 Hz; NaN where a channel holds nothing.</param>
/// <param name="State">What the two sites did.</param>
public readonly record struct PairSecond(double AtS, float Rho, PairState State);
