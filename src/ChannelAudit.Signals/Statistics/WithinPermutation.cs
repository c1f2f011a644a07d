using ChannelAudit.Signals.Random;

namespace ChannelAudit.Signals.Statistics;

/// <summary>Tests whether labels that every unit has once have the same mean, by exchanging them within each unit.</summary>
/// <remarks>For two labels this flips the signs of the units' differences. The statistic is the range of the labels' means over units. Up to
/// <see cref="LabelPermutation.MostExact"/> arrangements all are looked at, p = b/m with the observed one among them; beyond that
/// <see cref="LabelPermutation.Drawn"/> are drawn with <see cref="Pcg32"/>, p = (b + 1)/(m + 1).</remarks>
public static class WithinPermutation
{
    /// <summary>Tests units.</summary>
    /// <param name="values">Unit by unit, one finite value a label; left as it is.</param>
    /// <param name="levels">Number of labels, at least 2.</param>
    /// <param name="seed">Seed of the draws.</param>
    /// <returns>The range of means and its probability when labels mean nothing.</returns>
    /// <exception cref="ArgumentException">No unit, or one without a value for each label.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two labels.</exception>
    public static PermutationResult Of(ReadOnlySpan<double> values, int levels, ulong seed)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(levels, 2);
        Lengths.RequireAtLeast(values.Length, levels, nameof(values));
        Lengths.RequireExactly(values.Length % levels, 0, nameof(values));
        var units = values.Length / levels;
        var arranged = values.ToArray();
        var sums = new double[levels];
        var tally = new RangeTally(Range(arranged, levels, sums));
        if (Math.Pow(Orders(levels), units) <= LabelPermutation.MostExact)
        {
            LookAtAll(arranged, 0, levels, sums, ref tally);
            return tally.Exact();
        }

        var random = new Pcg32(seed);
        for (var draw = 0; draw < LabelPermutation.Drawn; draw++)
        {
            for (var unit = 0; unit < units; unit++)
            {
                Shuffle.InPlace(arranged.AsSpan(unit * levels, levels), random);
            }

            tally.Add(Range(arranged, levels, sums));
        }

        return tally.Drawn();
    }

    private static double Range(double[] values, int levels, double[] sums)
    {
        Array.Clear(sums);
        for (var i = 0; i < values.Length; i++)
        {
            sums[i % levels] += values[i];
        }

        return (sums.Max() - sums.Min()) / (values.Length / levels);
    }

    private static double Orders(int levels) => levels == 1 ? 1 : levels * Orders(Math.Min(levels - 1, 20));

    /// <summary>All orders of the values of one unit after the other; equal values count as different, as labels do.</summary>
    private static void LookAtAll(double[] values, int place, int levels, double[] sums, ref RangeTally tally)
    {
        if (place == values.Length)
        {
            tally.Add(Range(values, levels, sums));
            return;
        }

        var end = ((place / levels) + 1) * levels;
        for (var other = place; other < end; other++)
        {
            (values[place], values[other]) = (values[other], values[place]);
            LookAtAll(values, place + 1, levels, sums, ref tally);
            (values[place], values[other]) = (values[other], values[place]);
        }
    }
}
