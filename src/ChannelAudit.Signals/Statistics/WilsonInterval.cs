using MathNet.Numerics.Distributions;

namespace ChannelAudit.Signals.Statistics;

/// <summary>Score interval of a proportion (Wilson 1927), without continuity correction.</summary>
public static class WilsonInterval
{
    /// <summary>Gives the interval.</summary>
    /// <param name="successes">Number of successes, 0 to trials.</param>
    /// <param name="trials">Number of trials, at least 1.</param>
    /// <param name="confidence">Two-sided level, above 0 and below 1.</param>
    /// <returns>Lower and upper end, between 0 and 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static (double Low, double High) Of(long successes, long trials, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(successes);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(successes, trials);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(confidence, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(confidence, 1);
        var z = Normal.InvCDF(0, 1, (1 + confidence) / 2);
        var share = (double)successes / trials;
        var shrink = 1 + (z * z / trials);
        var centre = (share + (z * z / (2 * trials))) / shrink;
        var half = z / shrink * Math.Sqrt((share * (1 - share) / trials) + (z * z / (4.0 * trials * trials)));
        return (successes == 0 ? 0 : Math.Max(0, centre - half), successes == trials ? 1 : Math.Min(1, centre + half));
    }
}
