using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Measures;

/// <summary>By how much a fault shifts the mean rectified amplitude, in % of what it would be without the fault; below zero when it takes away.</summary>
public static class ScoreShift
{
    /// <summary>The most that is told, in %: beyond it the score is the fault, and nothing more can be said.</summary>
    public const double MostPercent = 9900;

    // 1/sqrt(1 - 0.9999) - 1 is 99.
    private const double MostShare = 0.9999;
    private const double Rounding = 1e-6;

    /// <summary>A fault that adds power: with a share q of all power, 1/sqrt(1 - q) - 1.</summary>
    /// <param name="faultPower">The fault's power behind the scoring filter.</param>
    /// <param name="totalPower">All power behind it.</param>
    /// <returns>The shift in %, at most 9900; null without any power.</returns>
    /// <remarks>Fault and muscle are taken as independent, and the shape of the amplitudes as the same with and without the fault.</remarks>
    public static double? OfAddedPower(double faultPower, double totalPower) => totalPower > 0
        ? 100 * ((1 / Math.Sqrt(1 - Math.Clamp(faultPower / totalPower, 0, MostShare))) - 1)
        : null;

    /// <summary>Clipping: what a Gaussian loses of its mean magnitude at that share of clipped samples; real clipping takes at least so much.</summary>
    /// <param name="clippedPercent">Clipped samples in %, 0 to 100.</param>
    public static double OfClipping(double clippedPercent) => -100 * ClippedGaussian.RectifiedLoss(clippedPercent / 100) + 0.0;

    /// <summary>Whether a shift is the most that is told: it may be larger, and what was there without the fault cannot be told.</summary>
    /// <param name="percent">The shift.</param>
    public static bool IsAtMost(double percent) => percent >= MostPercent - Rounding;

    /// <summary>What a fault adds to a mean rectified amplitude, below zero what it takes.</summary>
    /// <param name="rectified">The mean rectified amplitude with the fault, in the unit of the result.</param>
    /// <param name="percent">The shift in %, above -100; at the most that is told it is the least that the fault adds.</param>
    public static double Added(double rectified, double percent) => rectified - (rectified / (1 + (percent / 100)));

    /// <summary>The amplitude without the fault.</summary>
    /// <param name="rectified">The mean rectified amplitude with it.</param>
    /// <param name="percent">The shift.</param>
    /// <returns>Null when the fault takes everything, or is everything: then what was there cannot be told.</returns>
    public static double? Without(double rectified, double percent) => percent > -100 && !IsAtMost(percent) ? rectified / (1 + (percent / 100)) : null;
}
