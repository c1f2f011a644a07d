using System.Buffers;

namespace ChannelAudit.Signals.Statistics;

/// <summary>Straight line through points, by the median of the slopes of all pairs (Theil 1950, Sen 1968).</summary>
public static class TheilSen
{
    /// <summary>Longest input for which all pairs are written down.</summary>
    internal const int DirectLimit = 800;

    /// <summary>Fits the line.</summary>
    /// <param name="x">Finite values, at least two different ones; ascending (ties allowed) beyond 800 points.</param>
    /// <param name="y">As many finite values; both are left as they are.</param>
    /// <returns>Slope: median over the pairs with different x. Intercept: median(y) − slope·median(x), as SciPy's
    /// <c>theilslopes(method='separate')</c>.</returns>
    /// <exception cref="ArgumentException">The lengths differ, no two x differ, or a long input is not ascending.</exception>
    /// <remarks>Up to 800 points all slopes are written down and the median selected; longer inputs go through
    /// <see cref="SlopeSearch"/>, which needs memory for a few numbers a point only.</remarks>
    public static TheilSenLine Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Lengths.RequireExactly(y.Length, x.Length, nameof(y));
        Lengths.RequireAtLeast(x.Length, 2, nameof(x));
        var slope = x.Length <= DirectLimit ? DirectSlope(x, y) : new SlopeSearch(x, y).Median();
        return new TheilSenLine(slope, Quantiles.Median(y) - (slope * Quantiles.Median(x)));
    }

    /// <summary>Selects the median among all slopes.</summary>
    internal static double DirectSlope(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var slopes = ArrayPool<double>.Shared.Rent(x.Length * (x.Length - 1) / 2);
        try
        {
            var count = 0;
            for (var i = 0; i < x.Length; i++)
            {
                for (var j = i + 1; j < x.Length; j++)
                {
                    if (x[j] != x[i])
                    {
                        slopes[count++] = (y[j] - y[i]) / (x[j] - x[i]);
                    }
                }
            }

            if (count == 0)
            {
                throw new ArgumentException("A slope needs two different x.", nameof(x));
            }

            return Quantiles.MedianInPlace(slopes.AsSpan(0, count));
        }
        finally
        {
            ArrayPool<double>.Shared.Return(slopes);
        }
    }
}
