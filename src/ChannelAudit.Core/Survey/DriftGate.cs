using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Survey;

/// <summary>Whether a high-pass hides drift: claimed by the file at 0.1 Hz or above, or shown by a baseline that stays at zero.</summary>
/// <remarks>
/// Electrodes never give exactly zero volts to an amplifier that passes DC: half-cell potentials differ by many microvolts (common practice).
/// Engineering judgement: a median level within 5 µV of zero, with the levels' 90 % range below 10 µV, is taken for a high-passed file
/// where the file does not say that it passes DC.
/// </remarks>
public static class DriftGate
{
    private const double HidesFromHz = 0.1;
    private const double AtZeroUv = 5;
    private const double StillUv = 10;

    /// <summary>Why drift is hidden, or null when it would be seen.</summary>
    public static string? Cause(Channel channel, BaselineLevels baseline)
    {
        if (channel.Prefilter.HighpassHz is { } claimed)
        {
            return claimed >= HidesFromHz
                ? string.Create(CultureInfo.InvariantCulture, $"high-pass {claimed:0.###} Hz claimed by the file")
                : null;
        }

        return channel.IsMicrovolts && baseline.Count >= Drift.LeastLevels && StaysAtZero(baseline.Levels)
            ? "the baseline stays at zero: the file looks high-passed"
            : null;
    }

    private static bool StaysAtZero(ImmutableArray<double> levels)
    {
        double[] sorted = [.. levels.Order()];
        double range = Quantiles.Type7InPlace(sorted, 0.95) - Quantiles.Type7InPlace(sorted, 0.05);
        return Math.Abs(Quantiles.Median(levels.AsSpan())) < AtZeroUv && range < StillUv;
    }
}
