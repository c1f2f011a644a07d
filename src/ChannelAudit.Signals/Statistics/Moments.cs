using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ChannelAudit.Signals.Statistics;

/// <summary>Sums, means and spreads, in a fixed order and with little rounding error.</summary>
public static class Moments
{
    private const int PairwiseBlock = 128;

    /// <summary>Gives the sum, pairwise: blocks of 128 in eight strands, joined as a balanced tree.</summary>
    /// <param name="values">Any number of values; left as they are.</param>
    /// <returns>The sum, 0 when empty. The rounding error grows with the logarithm of the length (Higham 1993).</returns>
    public static double Sum(ReadOnlySpan<double> values) => PairwiseSum(values, power: false);

    /// <summary>Gives the arithmetic mean.</summary>
    /// <param name="values">At least one value; left as they are.</param>
    /// <returns>The mean in the unit of the input.</returns>
    /// <exception cref="ArgumentException">There is no value.</exception>
    public static double Mean(ReadOnlySpan<double> values)
    {
        Lengths.RequireAtLeast(values.Length, 1, nameof(values));
        return Sum(values) / values.Length;
    }

    /// <summary>Gives the root of the mean square.</summary>
    /// <param name="values">At least one value; left as they are.</param>
    /// <returns>The root mean square in the unit of the input.</returns>
    /// <exception cref="ArgumentException">There is no value.</exception>
    public static double Rms(ReadOnlySpan<double> values)
    {
        Lengths.RequireAtLeast(values.Length, 1, nameof(values));
        return Math.Sqrt(PairwiseSum(values, power: true) / values.Length);
    }

    /// <summary>Gives the standard deviation with divisor n−1.</summary>
    /// <param name="values">At least two values; left as they are.</param>
    /// <returns>The standard deviation in the unit of the input.</returns>
    /// <exception cref="ArgumentException">There are fewer than two values.</exception>
    /// <remarks>Two passes, with the correction of Chan, Golub and LeVeque (1983) for the rounding of the mean.</remarks>
    public static double StandardDeviation(ReadOnlySpan<double> values)
    {
        Lengths.RequireAtLeast(values.Length, 2, nameof(values));
        return Math.Sqrt(Math.Max(0, SquaresAboutMean(values, Mean(values))) / (values.Length - 1));
    }

    /// <summary>Gives the correlation of a series with itself one step later.</summary>
    /// <param name="values">At least two values; left as they are.</param>
    /// <returns>Σ(y[i]−ȳ)(y[i+1]−ȳ)/Σ(y[i]−ȳ)² with the mean of all values; not a number for a constant series.</returns>
    /// <exception cref="ArgumentException">There are fewer than two values.</exception>
    /// <remarks>The definition of the NIST Statistical Reference Datasets.</remarks>
    public static double LagOneCorrelation(ReadOnlySpan<double> values)
    {
        Lengths.RequireAtLeast(values.Length, 2, nameof(values));
        var mean = Mean(values);
        double sum = 0, lost = 0;
        for (var i = 1; i < values.Length; i++)
        {
            (sum, lost) = AddKeepingLoss(sum, lost, (values[i - 1] - mean) * (values[i] - mean));
        }

        return (sum + lost) / SquaresAboutMean(values, mean);
    }

    private static double SquaresAboutMean(ReadOnlySpan<double> values, double mean)
    {
        double squares = 0, lost = 0, rest = 0;
        foreach (var value in values)
        {
            var deviation = value - mean;
            rest += deviation;
            (squares, lost) = AddKeepingLoss(squares, lost, deviation * deviation);
        }

        return squares + lost - (rest * rest / values.Length);
    }

    /// <summary>Adds a term and keeps what rounding lost (Neumaier 1974).</summary>
    private static (double Sum, double Lost) AddKeepingLoss(double sum, double lost, double term)
    {
        var next = sum + term;
        var missed = Math.Abs(sum) >= Math.Abs(term) ? (sum - next) + term : (term - next) + sum;
        return (next, lost + missed);
    }

    private static double PairwiseSum(ReadOnlySpan<double> values, bool power)
    {
        if (values.Length <= PairwiseBlock)
        {
            return BlockSum(values, power);
        }

        var blocks = (values.Length + PairwiseBlock - 1) / PairwiseBlock;
        var half = (blocks + 1) / 2 * PairwiseBlock;
        return PairwiseSum(values[..half], power) + PairwiseSum(values[half..], power);
    }

    private static double BlockSum(ReadOnlySpan<double> values, bool power)
    {
        ref var origin = ref MemoryMarshal.GetReference(values);
        var (low, high) = (Vector256<double>.Zero, Vector256<double>.Zero);
        var i = 0;
        for (; i + 8 <= values.Length; i += 8)
        {
            var a = Vector256.LoadUnsafe(ref origin, (nuint)i);
            var b = Vector256.LoadUnsafe(ref origin, (nuint)(i + 4));
            low += power ? a * a : a;
            high += power ? b * b : b;
        }

        var joined = low + high;
        var sum = (joined[0] + joined[1]) + (joined[2] + joined[3]);
        for (; i < values.Length; i++)
        {
            sum += power ? values[i] * values[i] : values[i];
        }

        return sum;
    }
}
