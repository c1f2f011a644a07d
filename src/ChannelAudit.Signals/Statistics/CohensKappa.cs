using MathNet.Numerics.Distributions;

namespace ChannelAudit.Signals.Statistics;

/// <summary>Agreement of two raters beyond chance (Cohen 1960), for ordered answers with linear weights (Cohen 1968).</summary>
/// <remarks>κ = (p_o − p_e) / (1 − p_e), with p_o = Σ w_ij p_ij and p_e = Σ w_ij p_i. p_.j. Variance for large samples, κ not assumed 0, after Fleiss, Cohen and
/// Everitt 1969 (Psychol Bull 72:323): { Σ p_ij [w_ij − (w̄_i. + w̄_.j)(1 − κ)]² − [κ − p_e(1 − κ)]² } / (n (1 − p_e)²), where w̄_i. = Σ_j p_.j w_ij and
/// w̄_.j = Σ_i p_i. w_ij. The interval is κ ± z·SE, cut at −1 and 1. Same as statsmodels' <c>cohens_kappa(table, wt=...)</c>.</remarks>
public static class CohensKappa
{
    // What rounding leaves of a variance of 0.
    private const double NoVariance = 1e-14;

    /// <summary>Gives kappa of a table of counts.</summary>
    /// <param name="table">Square, row by row: how often the first rater gave answer i and the second answer j; no count below 0.</param>
    /// <param name="answers">Number of answers, at least 2.</param>
    /// <param name="weights">What counts as agreement.</param>
    /// <param name="confidence">Two-sided level of the interval, above 0 and below 1.</param>
    /// <returns>Kappa, or why it is not defined: nothing rated, or both gave one and the same answer throughout (p_e = 1).</returns>
    /// <exception cref="ArgumentException">The table is not square or has a count below 0.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two answers, or a level that is none.</exception>
    public static KappaResult Of(
        ReadOnlySpan<long> table, int answers, KappaWeights weights = KappaWeights.Unweighted, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(answers, 2);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(confidence, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(confidence, 1);
        Lengths.RequireExactly(table.Length, answers * answers, nameof(table));
        long count = 0;
        foreach (var cell in table)
        {
            count = cell < 0 ? throw new ArgumentException("A count cannot be below 0.", nameof(table)) : count + cell;
        }

        if (count == 0)
        {
            return new KappaResult(0, null, null, null, null, null, null, "nothing was rated by both");
        }

        var margins = new Margins(table, answers, count, weights);
        return IsOneAnswer(table, answers, count)
            ? new KappaResult(count, margins.Observed, margins.Expected, null, null, null, null, "both gave the same one answer throughout, so that chance alone would agree as well")
            : Defined(table, answers, count, margins, Normal.InvCDF(0, 1, (1 + confidence) / 2));
    }

    // Counted, not computed: p_e is 1 exactly when everything is in one cell of the diagonal.
    private static bool IsOneAnswer(ReadOnlySpan<long> table, int answers, long count)
    {
        for (var i = 0; i < answers; i++)
        {
            if (table[(i * answers) + i] == count)
            {
                return true;
            }
        }

        return false;
    }

    private static KappaResult Defined(ReadOnlySpan<long> table, int answers, long count, Margins margins, double z)
    {
        var (observed, expected) = (margins.Observed, margins.Expected);
        var kappa = (observed - expected) / (1 - expected);
        var sum = 0.0;
        for (var i = 0; i < answers; i++)
        {
            for (var j = 0; j < answers; j++)
            {
                var term = margins.Weight(i, j) - ((margins.OfRow(i) + margins.OfColumn(j)) * (1 - kappa));
                sum += (double)table[(i * answers) + j] / count * term * term;
            }
        }

        var off = kappa - (expected * (1 - kappa));
        var variance = (sum - (off * off)) / (count * (1 - expected) * (1 - expected));
        if (variance <= NoVariance)
        {
            return new KappaResult(count, observed, expected, kappa, null, null, null, null);
        }

        var error = Math.Sqrt(variance);
        return new KappaResult(count, observed, expected, kappa, error, Math.Max(-1, kappa - (z * error)), Math.Min(1, kappa + (z * error)), null);
    }

    private readonly ref struct Margins
    {
        private readonly int _answers;
        private readonly KappaWeights _weights;
        private readonly double[] _ofRow;
        private readonly double[] _ofColumn;

        public Margins(ReadOnlySpan<long> table, int answers, long count, KappaWeights weights)
        {
            (_answers, _weights, _ofRow, _ofColumn) = (answers, weights, new double[answers], new double[answers]);
            var rows = new double[answers];
            var columns = new double[answers];
            for (var i = 0; i < table.Length; i++)
            {
                rows[i / answers] += (double)table[i] / count;
                columns[i % answers] += (double)table[i] / count;
                Observed += Weight(i / answers, i % answers) * table[i] / count;
            }

            for (var i = 0; i < answers; i++)
            {
                for (var j = 0; j < answers; j++)
                {
                    _ofRow[i] += columns[j] * Weight(i, j);
                    _ofColumn[j] += rows[i] * Weight(i, j);
                    Expected += Weight(i, j) * rows[i] * columns[j];
                }
            }
        }

        public double Observed { get; }

        public double Expected { get; }

        public double Weight(int i, int j) => _weights == KappaWeights.Linear
            ? 1 - ((double)Math.Abs(i - j) / (_answers - 1))
            : i == j ? 1 : 0;

        public double OfRow(int i) => _ofRow[i];

        public double OfColumn(int j) => _ofColumn[j];
    }
}
