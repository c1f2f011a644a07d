using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Measures;

/// <summary>The trend of the resting level: Theil-Sen slope of the quiet segments' amplitude against time, over their median, in % a minute.</summary>
/// <remarks>It is the drift that a high-passed file can still show: contacts that dry out or loosen.</remarks>
public static class LevelTrend
{
    private const int LeastSegments = 10;
    private const double LeastMinutes = 1;

    /// <summary>The trend; null with fewer than 10 quiet segments, or when they span less than a minute.</summary>
    /// <param name="minutes">Times in minutes, ascending.</param>
    /// <param name="rms">Amplitudes.</param>
    public static double? Of(ReadOnlySpan<double> minutes, ReadOnlySpan<double> rms)
    {
        if (minutes.Length < LeastSegments || minutes[^1] - minutes[0] < LeastMinutes)
        {
            return null;
        }

        double median = Quantiles.Median(rms);
        return median > 0 ? 100 * TheilSen.Fit(minutes, rms).Slope / median : null;
    }
}
