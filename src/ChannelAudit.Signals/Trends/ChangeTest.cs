namespace ChannelAudit.Signals.Trends;

/// <summary>Tests whether the level of a series changed anywhere: a step, a slow drift, or an episode that is over.</summary>
/// <remarks>
/// <para>Values less their mean are summed block by block, and the sums are added up along time:
/// S_j = b_1 + ... + b_j, S_0 = S_n = 0. V, the range of S over √Σ b_j², is without a change that of a Brownian bridge, whose tail is <see cref="KuiperTail"/>. The range sees a
/// change wherever it lies, and one that is over as well as one that stays.</para>
/// <para>Σ b_j² holds a change, too, so that V never exceeds √n/2. A step in the middle takes the share 4V²/n of it, and that share of n values has the tail (1 − 4V²/n)^(n/2) where the bridge
/// has exp(−2V²) (the beta law of a squared correlation): V is therefore taken as √(−n/4·ln(1 − 4V²/n)).</para>
/// <para>Whatever belongs together (sessions of one week) is one block: dependence within blocks is in the b_j themselves. For what lasts longer
/// V is divided by √((1 + r)/(1 − r)), r the correlation of neighbouring blocks, of what is left beside the <see cref="ChangeShape"/> that fits best: a slow drift is no correlation. Where it is above 0 one standard error,
/// 1/√n, is added: an estimate that is too low by chance makes a change of nothing.</para>
/// <para>In simulation (20 000 Gaussian series without a change) a level of 1 % is kept at 0.3 to 0.4 % where 20 to 150 blocks are independent. Where what both values of a block share follows the block
/// before, it is 1.1 to 1.4 % (correlation 0.3 over 60 blocks, 0.5 over 150), and not kept where 0.6 meets few blocks: 2.2 % of 150 blocks, 3.3 % of 60, 5.4 % of 20 with one value each.</para>
/// </remarks>
public static class ChangeTest
{
    private const double Doubtful = 0.1;

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
        var (sums, counts, times) = Sums(values, blocks);
        double at = 0, high = 0, low = 0, square = 0;
        for (var j = 0; j < sums.Length; j++)
        {
            at += sums[j];
            square += sums[j] * sums[j];
            high = Math.Max(high, at);
            low = Math.Min(low, at);
        }

        if (square <= Rounding * values.Length || sums.Length < 2)
        {
            return new ChangeTestResult(1, 0, 0, sums.Length);
        }

        var share = Math.Min(4 * (high - low) * (high - low) / (square * sums.Length), MostShare);
        var statistic = Math.Sqrt(-sums.Length / 4.0 * Math.Log(1 - share));

        // What is no sign as it is needs no correlation, which only takes away from it.
        var correlation = KuiperTail.Of(statistic) > Doubtful ? 0 : Correlation(sums, counts, times);
        statistic *= Math.Sqrt((1 - correlation) / (1 + correlation));
        return new ChangeTestResult(KuiperTail.Of(statistic), statistic, correlation, sums.Length);
    }

    private static (double[] Sums, int[] Counts, double[] Times) Sums(ReadOnlySpan<double> values, ReadOnlySpan<int> blocks)
    {
        double mean = 0;
        foreach (var value in values)
        {
            mean += value / values.Length;
        }

        List<double> sums = [];
        List<int> counts = [];
        List<double> times = [];
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
                times.Add(blocks[i]);
            }

            sums[^1] += values[i] - mean;
            counts[^1]++;
        }

        return ([.. sums], [.. counts], [.. times]);
    }

    // Of what is left of the block means beside the change that fits them best, weighted by the root of their counts.
    private static double Correlation(double[] sums, int[] counts, double[] times)
    {
        double[] left = [.. sums.Select((sum, j) => sum / counts[j])];
        if (sums.Length >= 2 * ChangeShape.LeastBlocks)
        {
            var shape = ChangeShape.Of(times, left, [.. counts.Select(count => (double)count)]);
            for (var j = 0; j < left.Length; j++)
            {
                left[j] -= shape.LevelAt(j, times);
            }
        }

        double product = 0, square = 0, before = 0;
        for (var j = 0; j < left.Length; j++)
        {
            var own = left[j] * Math.Sqrt(counts[j]);
            product += own * before;
            square += own * own;
            before = own;
        }

        return product <= 0 ? 0 : Math.Min((product / square) + (1 / Math.Sqrt(left.Length)), MostCorrelation);
    }
}
