using System.Buffers;
using System.Numerics;

namespace ChannelAudit.Signals.Statistics;

/// <summary>Quantiles by selection, without sorting everything.</summary>
public static class Quantiles
{
    /// <summary>Gives a quantile of type 7 (Hyndman and Fan 1996; the default of NumPy and R).</summary>
    /// <param name="values">At least one value, none of them not a number; reordered.</param>
    /// <param name="probability">0 (the smallest) to 1 (the largest).</param>
    /// <returns>The value at rank (n−1)·probability, interpolated between two order statistics.</returns>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not between 0 and 1.</exception>
    public static double Type7InPlace(Span<double> values, double probability)
    {
        Lengths.RequireAtLeast(values.Length, 1, nameof(values));
        if (!(probability is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "A probability is between 0 and 1.");
        }

        var rank = (values.Length - 1) * probability;
        var below = (int)rank;
        var low = SelectInPlace(values, below);
        var weight = rank - below;
        if (weight == 0)
        {
            return low;
        }

        var high = Smallest(values[(below + 1)..]);
        return low == high ? low : low + (weight * (high - low));
    }

    /// <summary>Gives the median.</summary>
    /// <param name="values">At least one value, none of them not a number; reordered.</param>
    /// <returns>The middle value, or half-way between the two middle ones.</returns>
    /// <exception cref="ArgumentException">There is no value.</exception>
    public static double MedianInPlace(Span<double> values) => Type7InPlace(values, 0.5);

    /// <summary>Gives the median and leaves the input as it is.</summary>
    /// <param name="values">At least one value, none of them not a number.</param>
    /// <returns>The middle value, or half-way between the two middle ones.</returns>
    /// <exception cref="ArgumentException">There is no value.</exception>
    public static double Median(ReadOnlySpan<double> values)
    {
        var copy = ArrayPool<double>.Shared.Rent(values.Length);
        try
        {
            values.CopyTo(copy);
            return MedianInPlace(copy.AsSpan(0, values.Length));
        }
        finally
        {
            ArrayPool<double>.Shared.Return(copy);
        }
    }

    /// <summary>Gives an order statistic; smaller values end before it, larger ones behind (Hoare 1961).</summary>
    /// <param name="values">Values without any that is not a number; reordered.</param>
    /// <param name="rank">Rank from 0.</param>
    /// <returns>The value at the rank.</returns>
    internal static double SelectInPlace(Span<double> values, int rank)
    {
        var (left, right) = (0, values.Length - 1);
        var patience = 4 * (BitOperations.Log2((uint)values.Length) + 1);
        while (right - left > 16 && patience-- > 0)
        {
            var (i, j) = Partition(values, left, right);
            if (rank <= j)
            {
                right = j;
            }
            else if (rank >= i)
            {
                left = i;
            }
            else
            {
                return values[rank];
            }
        }

        values[left..(right + 1)].Sort();
        return values[rank];
    }

    /// <summary>Parts a range about the median of three; what lies between j and i equals the pivot.</summary>
    private static (int I, int J) Partition(Span<double> values, int left, int right)
    {
        var pivot = MedianOfThree(values[left], values[left + ((right - left) / 2)], values[right]);
        var (i, j) = (left, right);
        while (i <= j)
        {
            while (values[i] < pivot)
            {
                i++;
            }

            while (values[j] > pivot)
            {
                j--;
            }

            if (i <= j)
            {
                (values[i], values[j]) = (values[j], values[i]);
                i++;
                j--;
            }
        }

        return (i, j);
    }

    private static double MedianOfThree(double a, double b, double c) =>
        Math.Max(Math.Min(a, b), Math.Min(Math.Max(a, b), c));

    private static double Smallest(ReadOnlySpan<double> values)
    {
        var smallest = values[0];
        foreach (var value in values)
        {
            smallest = Math.Min(smallest, value);
        }

        return smallest;
    }
}
