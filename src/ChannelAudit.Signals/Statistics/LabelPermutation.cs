using ChannelAudit.Signals.Random;

namespace ChannelAudit.Signals.Statistics;

/// <summary>Tests whether units with different labels have the same mean, by exchanging the labels among the units.</summary>
/// <remarks>The statistic is the range of the labels' means; for two labels the size of their difference. Whatever belongs together must be one unit:
/// participants, not their trials. Up to <see cref="MostExact"/> different arrangements all are looked at, p = b/m with the observed one among them; beyond that
/// <see cref="Drawn"/> are drawn with <see cref="Pcg32"/>, p = (b + 1)/(m + 1).</remarks>
public static class LabelPermutation
{
    /// <summary>As many arrangements are looked at one by one.</summary>
    public const int MostExact = 20_000;

    /// <summary>As many are drawn where there are more.</summary>
    public const int Drawn = 4999;

    /// <summary>Tests units.</summary>
    /// <param name="values">A finite value a unit.</param>
    /// <param name="labels">Its label, 0 to <paramref name="levels"/> − 1; as long, left as it is.</param>
    /// <param name="levels">Number of labels, at least 2, each with a unit.</param>
    /// <param name="seed">Seed of the draws.</param>
    /// <returns>The range of means and its probability when labels mean nothing.</returns>
    /// <exception cref="ArgumentException">Lengths differ, or a label has no unit.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two labels.</exception>
    public static PermutationResult Of(ReadOnlySpan<double> values, ReadOnlySpan<int> labels, int levels, ulong seed)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(levels, 2);
        Lengths.RequireExactly(labels.Length, values.Length, nameof(labels));
        var sizes = new int[levels];
        foreach (var label in labels)
        {
            sizes[label]++;
        }

        if (sizes.Contains(0))
        {
            throw new ArgumentException("Every label needs a unit.", nameof(labels));
        }

        var arranged = labels.ToArray();
        var sums = new double[levels];
        var tally = new RangeTally(Range(values, arranged, sizes, sums));
        if (Arrangements(sizes) <= MostExact)
        {
            Array.Sort(arranged);
            do
            {
                tally.Add(Range(values, arranged, sizes, sums));
            }
            while (ToNext(arranged));
            return tally.Exact();
        }

        var random = new Pcg32(seed);
        for (var draw = 0; draw < Drawn; draw++)
        {
            Shuffle.InPlace(arranged, random);
            tally.Add(Range(values, arranged, sizes, sums));
        }

        return tally.Drawn();
    }

    private static double Range(ReadOnlySpan<double> values, int[] labels, int[] sizes, double[] sums)
    {
        Array.Clear(sums);
        for (var i = 0; i < labels.Length; i++)
        {
            sums[labels[i]] += values[i];
        }

        double least = double.PositiveInfinity, most = double.NegativeInfinity;
        for (var level = 0; level < sums.Length; level++)
        {
            var mean = sums[level] / sizes[level];
            least = Math.Min(least, mean);
            most = Math.Max(most, mean);
        }

        return most - least;
    }

    /// <summary>Different arrangements of the labels, n!/(n1! n2! ...); more than <see cref="MostExact"/> when there are that many.</summary>
    private static double Arrangements(int[] sizes)
    {
        double product = 1;
        var placed = 0;
        foreach (var size in sizes)
        {
            for (var i = 1; i <= size && product <= MostExact; i++)
            {
                product = product * ++placed / i;
            }
        }

        return product;
    }

    /// <summary>The next arrangement in lexical order; false behind the last (Knuth 4A, algorithm L).</summary>
    private static bool ToNext(int[] labels)
    {
        var left = labels.Length - 2;
        while (left >= 0 && labels[left] >= labels[left + 1])
        {
            left--;
        }

        if (left < 0)
        {
            return false;
        }

        var right = labels.Length - 1;
        while (labels[left] >= labels[right])
        {
            right--;
        }

        (labels[left], labels[right]) = (labels[right], labels[left]);
        Array.Reverse(labels, left + 1, labels.Length - left - 1);
        return true;
    }
}
