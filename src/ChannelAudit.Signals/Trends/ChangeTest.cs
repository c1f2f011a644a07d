namespace ChannelAudit.Signals.Trends;

/// <summary>Tests whether the level of a series changed anywhere: a step, a slow drift, or an episode that is over.</summary>
/// <remarks>
/// <para>Values less their mean are summed block by block, and the sums are added up along time:
/// S_j = b_1 + ... + b_j, S_0 = S_n = 0. V, the range of S over √Σ b_j², is without a change that of a Brownian bridge, whose tail is <see cref="KuiperTail"/>. The range sees a
/// change wherever it lies, and one that is over as well as one that stays.</para>
/// <para>Σ b_j² holds a change, too, so that V never exceeds √n/2. A step in the middle takes the share 4V²/n of it, and that share of n values has the tail (1 − 4V²/n)^(n/2) where the bridge
/// has exp(−2V²) (the beta law of a squared correlation): V is therefore taken as √(−n/4·ln(1 − 4V²/n)).</para>
/// <para>Whatever belongs together (sessions of one week) is one block: dependence within blocks is in the b_j themselves. For what lasts longer
/// V is divided by √((1 + r)/(1 − r)), r the correlation of neighbouring blocks, of what is left beside a step or an episode between the two extremes of S. Where it is above 0 one standard error,
/// 1/√n, is added: an estimate that is too low by chance makes a change of nothing. In simulation a level of 1 % is then kept at 0.5 % where blocks are independent and at 1 to 2 % where neighbours
/// correlate by 0.3 to 0.5.</para>
/// </remarks>
public static class ChangeTest
{
    private const double MostCorrelation = 0.9;

    // Equal values leave this of their mean, squared.
    private const double Rounding = 1e-24;

    private const double MostShare = 1 - 1e-12;

    /// <summary>Tests a series.</summary>
    /// <param name="values">Finite values in order of time, wild ones brought in by the caller; left as they are.</param>
    /// <param name="blocks">Number of each value's block, never falling, as long.</param>
    /// <returns>The result; with a probability of 1 when all values are equal or all are of one block.</returns>
    /// <exception cref="ArgumentException">Lengths differ, or blocks fall.</exception>
    public static ChangeTestResult Of(ReadOnlySpan<double> values, ReadOnlySpan<int> blocks)
    {
        Lengths.RequireExactly(blocks.Length, values.Length, nameof(blocks));
        var (sums, counts) = Sums(values, blocks);
        double at = 0, high = 0, low = 0, square = 0;
        int highAt = 0, lowAt = 0;
        for (var j = 0; j < sums.Length; j++)
        {
            at += sums[j];
            square += sums[j] * sums[j];
            (high, highAt) = at > high ? (at, j + 1) : (high, highAt);
            (low, lowAt) = at < low ? (at, j + 1) : (low, lowAt);
        }

        if (square <= Rounding * values.Length || sums.Length < 2)
        {
            return new ChangeTestResult(1, 0, 0, sums.Length);
        }

        var correlation = Correlation(sums, counts, Math.Min(highAt, lowAt), Math.Max(highAt, lowAt));
        var share = Math.Min(4 * (high - low) * (high - low) / (square * sums.Length), MostShare);
        var statistic = Math.Sqrt(-sums.Length / 4.0 * Math.Log(1 - share) * (1 - correlation) / (1 + correlation));
        return new ChangeTestResult(KuiperTail.Of(statistic), statistic, correlation, sums.Length);
    }

    private static (double[] Sums, int[] Counts) Sums(ReadOnlySpan<double> values, ReadOnlySpan<int> blocks)
    {
        double mean = 0;
        foreach (var value in values)
        {
            mean += value / values.Length;
        }

        List<double> sums = [];
        List<int> counts = [];
        for (var i = 0; i < values.Length; i++)
        {
            if (i == 0 || blocks[i] != blocks[i - 1])
            {
                if (i > 0 && blocks[i] < blocks[i - 1])
                {
                    throw new ArgumentException("Blocks are in order of time.", nameof(blocks));
                }

                sums.Add(0);
                counts.Add(0);
            }

            sums[^1] += values[i] - mean;
            counts[^1]++;
        }

        return ([.. sums], [.. counts]);
    }

    // Of what is left of the block means, weighted by the root of their counts, beside the mean of each of the two parts.
    private static double Correlation(double[] sums, int[] counts, int from, int to)
    {
        double inside = 0, outside = 0;
        int insideCount = 0, outsideCount = 0;
        for (var j = 0; j < sums.Length; j++)
        {
            if (j >= from && j < to)
            {
                (inside, insideCount) = (inside + sums[j], insideCount + counts[j]);
            }
            else
            {
                (outside, outsideCount) = (outside + sums[j], outsideCount + counts[j]);
            }
        }

        double product = 0, square = 0, before = 0;
        for (var j = 0; j < sums.Length; j++)
        {
            var mean = j >= from && j < to ? inside / Math.Max(1, insideCount) : outside / Math.Max(1, outsideCount);
            var left = (sums[j] - (mean * counts[j])) / Math.Sqrt(counts[j]);
            product += left * before;
            square += left * left;
            before = left;
        }

        return product <= 0 ? 0 : Math.Min((product / square) + (1 / Math.Sqrt(sums.Length)), MostCorrelation);
    }
}
