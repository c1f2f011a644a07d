namespace ChannelAudit.Signals.Trends;

/// <summary>Exponentially weighted moving average of a series, with its limits (Roberts 1959; NIST/SEMATECH e-Handbook, section 6.3.2.4).</summary>
/// <remarks>z_i = λ·x_i + (1 − λ)·z_(i−1), z_0 the target. The limits are those of a long series: L·σ·√(λ/(2 − λ)) to either side, for independent values.</remarks>
public static class Ewma
{
    /// <summary>Gives the average after each value.</summary>
    /// <param name="values">Finite values in order of time; left as they are.</param>
    /// <param name="target">Where the average starts.</param>
    /// <param name="weight">λ, the weight of the newest value, above 0 and at most 1.</param>
    /// <returns>As many averages as values.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The weight is out of range.</exception>
    public static double[] Of(ReadOnlySpan<double> values, double target, double weight)
    {
        RequireWeight(weight);
        var averages = new double[values.Length];
        var before = target;
        for (var i = 0; i < values.Length; i++)
        {
            before = averages[i] = (weight * values[i]) + ((1 - weight) * before);
        }

        return averages;
    }

    /// <summary>How far from the target the average may lie.</summary>
    /// <param name="sigma">Standard deviation of one value while nothing changes, 0 or more.</param>
    /// <param name="weight">λ, above 0 and at most 1.</param>
    /// <param name="width">L, in standard deviations of the average; usually 3.</param>
    /// <returns>L·σ·√(λ/(2 − λ)), in the unit of σ.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The weight is out of range.</exception>
    public static double Limit(double sigma, double weight, double width)
    {
        RequireWeight(weight);
        return width * sigma * Math.Sqrt(weight / (2 - weight));
    }

    private static void RequireWeight(double weight)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(weight, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(weight, 1);
    }
}
