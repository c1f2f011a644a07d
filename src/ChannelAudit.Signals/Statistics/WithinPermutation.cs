using ChannelAudit.Signals.Random;

namespace ChannelAudit.Signals.Statistics;

/// <summary>Tests whether labels that every unit has once have the same mean, by exchanging them within each unit.</summary>
/// <remarks>For two labels this flips the signs of the units' differences. The statistic is the range of the labels' means over units. It stays the same when labels are
/// exchanged in all units at once, and when a unit has one value throughout: the first unit keeps its order, and units of one value are passed over. Up to
/// <see cref="LabelPermutation.MostExact"/> arrangements of the others all are looked at, p = b/m with the observed one among them; beyond that
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
        var all = values.Length / levels;
        var arranged = Varying(values, levels);
        var units = arranged.Length / levels;
        var sums = new double[levels];
        var tally = new RangeTally(Range(arranged, all, sums));
        if (Math.Pow(Orders(levels), Math.Max(0, units - 1)) <= LabelPermutation.MostExact)
        {
            LookAtAll(arranged, Math.Min(levels, arranged.Length), all, sums, ref tally);
            return tally.Exact();
        }

        var random = new Pcg32(seed);
        for (var draw = 0; draw < LabelPermutation.Drawn; draw++)
        {
            for (var unit = 1; unit < units; unit++)
            {
                Shuffle.InPlace(arranged.AsSpan(unit * levels, levels), random);
            }

            tally.Add(Range(arranged, all, sums));
        }

        return tally.Drawn();
    }

    /// <summary>The values of the units that have different ones.</summary>
    private static double[] Varying(ReadOnlySpan<double> values, int levels)
    {
        var varying = new List<double>(values.Length);
        for (var unit = 0; unit < values.Length; unit += levels)
        {
            var own = values.Slice(unit, levels);
            if (own.ContainsAnyExcept(own[0]))
            {
                varying.AddRange(own);
            }
        }

        return [.. varying];
    }

    private static double Range(double[] values, int units, double[] sums)
    {
        Array.Clear(sums);
        for (var i = 0; i < values.Length; i++)
        {
            sums[i % sums.Length] += values[i];
        }

        return (sums.Max() - sums.Min()) / units;
    }

    private static double Orders(int levels) => levels == 1 ? 1 : levels * Orders(Math.Min(levels - 1, 20));

    /// <summary>All orders of the values of one unit after the other; equal values count as different, as labels do.</summary>
    private static void LookAtAll(double[] values, int place, int units, double[] sums, ref RangeTally tally)
    {
        if (place == values.Length)
        {
            tally.Add(Range(values, units, sums));
            return;
        }

        var end = ((place / sums.Length) + 1) * sums.Length;
        for (var other = place; other < end; other++)
        {
            (values[place], values[other]) = (values[other], values[place]);
            LookAtAll(values, place + 1, units, sums, ref tally);
            (values[place], values[other]) = (values[other], values[place]);
        }
    }
}
