using System.Buffers;

namespace ChannelAudit.Signals.Statistics;

/// <summary>Spread about the median, which outliers do not move.</summary>
public static class RobustScale
{
    /// <summary>Standard deviation of a normal distribution over its median absolute deviation: 1/Φ⁻¹(3/4).</summary>
    public const double Normal = 1.482602218505602;

    /// <summary>Gives the median absolute deviation from the median.</summary>
    /// <param name="values">At least one value, none of them not a number; left as they are.</param>
    /// <returns>The deviation in the unit of the input; 0 when more than half of the values are equal.</returns>
    /// <exception cref="ArgumentException">There is no value.</exception>
    public static double Mad(ReadOnlySpan<double> values)
    {
        var rented = ArrayPool<double>.Shared.Rent(values.Length);
        try
        {
            var deviations = rented.AsSpan(0, values.Length);
            values.CopyTo(deviations);
            var median = Quantiles.MedianInPlace(deviations);
            foreach (ref var value in deviations)
            {
                value = Math.Abs(value - median);
            }

            return Quantiles.MedianInPlace(deviations);
        }
        finally
        {
            ArrayPool<double>.Shared.Return(rented);
        }
    }

    /// <summary>Gives the standard deviation that a normal distribution with this median absolute deviation has.</summary>
    /// <param name="values">At least one value, none of them not a number; left as they are.</param>
    /// <returns><see cref="Normal"/> times the median absolute deviation, in the unit of the input.</returns>
    /// <exception cref="ArgumentException">There is no value.</exception>
    public static double Sigma(ReadOnlySpan<double> values) => Normal * Mad(values);
}
