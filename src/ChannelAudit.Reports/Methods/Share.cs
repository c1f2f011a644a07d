using System.Globalization;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Reports.Methods;

/// <summary>A number of things out of all of them, with the 95 % interval of the share after Wilson (1927).</summary>
/// <param name="Count">How many.</param>
/// <param name="Total">Out of how many.</param>
public readonly record struct Share(int Count, int Total)
{
    /// <summary>The share, 0 to 1; null when there is nothing to share.</summary>
    public double? Value => Total == 0 ? null : (double)Count / Total;

    /// <summary>Lower and upper end of the interval, 0 to 1; null when there is nothing to share.</summary>
    public (double Low, double High)? Interval => Total == 0 ? null : WilsonInterval.Of(Count, Total);

    /// <summary><c>3 of 120 (2.5 %, 0.9 to 7.1 %)</c>; one decimal.</summary>
    public override string ToString() => Interval is { } ends
        ? string.Create(
            CultureInfo.InvariantCulture,
            $"{Count} of {Total} ({100 * (double)Count / Total:F1} %, {100 * ends.Low:F1} to {100 * ends.High:F1} %)")
        : "none of 0";
}
