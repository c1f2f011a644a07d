namespace ChannelAudit.Signals.Statistics;

/// <summary>Fisher's exact test of a table of two by two (Fisher 1935): are two shares of independent things the same?</summary>
/// <remarks>Given its margins the first cell is hypergeometric. Probabilities come from ratios of neighbouring tables, from the most probable one outwards, so that no
/// logarithm is needed and every machine gives the same bits. Two-sided: the sum over tables no more probable than the observed one, with a relative
/// slack of 1e-7 for ties, as R's <c>fisher.test</c>. Things that belong together (trials of one participant) are not independent: do not use it on them.</remarks>
public static class FisherExact
{
    private const double Slack = 1 + 1e-7;
    private const double LargestLogOdds = 50;
    private const double LargestPower = 600;
    private const int Halvings = 80;

    /// <summary>Tests the table (a, b; c, d).</summary>
    /// <param name="a">First row, first column; at least 0 like all.</param>
    /// <param name="b">First row, second column.</param>
    /// <param name="c">Second row, first column.</param>
    /// <param name="d">Second row, second column.</param>
    /// <returns>Probabilities from 0 to 1; all 1 when a row or a column is empty.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count is below 0.</exception>
    public static FisherResult Of(int a, int b, int c, int d)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(a);
        ArgumentOutOfRangeException.ThrowIfNegative(b);
        ArgumentOutOfRangeException.ThrowIfNegative(c);
        ArgumentOutOfRangeException.ThrowIfNegative(d);
        var least = Math.Max(0, a - d);
        var weights = Weights(a, b, c, d, least);
        var observed = weights[a - least];
        double total = 0, twoSided = 0, greater = 0, less = 0, rarest = 0;
        var lightest = double.PositiveInfinity;
        foreach (var weight in weights)
        {
            lightest = Math.Min(lightest, weight);
        }

        for (var i = 0; i < weights.Length; i++)
        {
            total += weights[i];
            twoSided += weights[i] <= observed * Slack ? weights[i] : 0;
            greater += i >= a - least ? weights[i] : 0;
            less += i <= a - least ? weights[i] : 0;
            rarest += weights[i] <= lightest * Slack ? weights[i] : 0;
        }

        double? odds = b == 0 || c == 0 ? null : (double)a * d / ((double)b * c);
        return new FisherResult(Math.Min(1, twoSided / total), Math.Min(1, greater / total), Math.Min(1, less / total), odds, rarest / total, Conditional(weights, a - least));
    }

    /// <summary>Probabilities of all tables with these margins, by their first cell from <paramref name="least"/> on, over that of the most probable one.</summary>
    private static double[] Weights(int a, int b, int c, int d, int least)
    {
        long row = (long)a + b;
        long column = (long)a + c;
        long total = row + c + d;
        var weights = new double[Math.Min(row, column) - least + 1];
        var mode = (int)Math.Clamp((row + 1) * (column + 1) / (total + 2), least, least + weights.Length - 1) - least;
        weights[mode] = 1;
        for (var i = mode; i + 1 < weights.Length; i++)
        {
            weights[i + 1] = weights[i] * Ratio(least + i, row, column, total);
        }

        for (var i = mode; i > 0; i--)
        {
            weights[i - 1] = weights[i] / Ratio(least + i - 1, row, column, total);
        }

        return weights;
    }

    /// <summary>The odds ratio at which the mean first cell is the observed one, by halving its logarithm; both grow together.</summary>
    private static double? Conditional(double[] weights, int observed)
    {
        if (observed == 0 || observed == weights.Length - 1)
        {
            return null;
        }

        double low = -LargestLogOdds, high = LargestLogOdds;
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Mean(weights, observed, middle) < observed ? (middle, high) : (low, middle);
        }

        return Math.Exp((low + high) / 2);
    }

    // Seen from the observed table, so that no power runs over.
    private static double Mean(double[] weights, int observed, double logOdds)
    {
        double sum = 0, total = 0;
        for (var i = 0; i < weights.Length; i++)
        {
            var tilted = weights[i] * Math.Exp(Math.Clamp((i - observed) * logOdds, -LargestPower, LargestPower));
            (sum, total) = (sum + (tilted * i), total + tilted);
        }

        return sum / total;
    }

    /// <summary>Probability of a first cell of x + 1 over that of x.</summary>
    private static double Ratio(long x, long row, long column, long total) =>
        (double)(row - x) * (column - x) / ((double)(x + 1) * (total - row - column + x + 1));
}
