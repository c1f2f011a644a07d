namespace ChannelAudit.Measures;

/// <summary>How far a contraction stands out from rest.</summary>
/// <remarks>
/// 10 log10((P_c - P_r) / P_r), P in the EMG band without mains. A contraction that is no stronger than rest has no logarithm: it is given the
/// floor of -20 dB, far below any limit, and not minus infinity. 20 over 2 uV is 19.96 dB, not the 20.00 dB of the plain ratio.
/// </remarks>
public static class ContractionSnr
{
    /// <summary>The least value, in dB.</summary>
    public const double FloorDb = -20;

    /// <summary>The ratio in dB.</summary>
    /// <param name="contractionPower">Power during the contraction, unit².</param>
    /// <param name="restPower">Power at rest, unit², above 0.</param>
    public static double Of(double contractionPower, double restPower) =>
        contractionPower > restPower ? Math.Max(FloorDb, 10 * Math.Log10((contractionPower - restPower) / restPower)) : FloorDb;
}
