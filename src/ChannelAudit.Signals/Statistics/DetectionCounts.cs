using System.Runtime.InteropServices;

namespace ChannelAudit.Signals.Statistics;

/// <summary>A call of yes or no against the truth.</summary>
/// <param name="Hits">Called yes, and are.</param>
/// <param name="Misses">Called no, and are yes.</param>
/// <param name="FalseAlarms">Called yes, and are not.</param>
/// <param name="Clears">Called no, and are not.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct DetectionCounts(int Hits, int Misses, int FalseAlarms, int Clears)
{
    /// <summary>All that are yes.</summary>
    public int Positives => Hits + Misses;

    /// <summary>All that are not.</summary>
    public int Negatives => FalseAlarms + Clears;

    /// <summary>Share of the positives that are called, 0 to 1; null without positives.</summary>
    public double? Sensitivity => Positives == 0 ? null : (double)Hits / Positives;

    /// <summary>Share of the negatives that are not called, 0 to 1; null without negatives.</summary>
    public double? Specificity => Negatives == 0 ? null : (double)Clears / Negatives;

    /// <summary>Sensitivity + specificity − 1 (Youden 1950), −1 to 1; null when one of them is.</summary>
    public double? Youden => Sensitivity + Specificity - 1;
}
