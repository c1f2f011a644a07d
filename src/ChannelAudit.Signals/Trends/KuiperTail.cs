namespace ChannelAudit.Signals.Trends;

/// <summary>Probability that a Brownian bridge spans a range (Kuiper 1960, eq. 1.1; the limiting law of his statistic V·√n).</summary>
public static class KuiperTail
{
    /// <summary>Below this the probability is 1 to nine digits, and the series needs many terms.</summary>
    private const double Certain = 0.4;

    private const double Negligible = 1e-18;

    /// <summary>Gives the probability of a range at least this wide.</summary>
    /// <param name="range">Highest less lowest value of the bridge, 0 or more.</param>
    /// <returns>2·Σ (4j²x² − 1)·exp(−2j²x²), j from 1 on; 0 to 1.</returns>
    public static double Of(double range)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(range);
        if (range < Certain)
        {
            return 1;
        }

        double sum = 0;
        for (var j = 1; j < 100; j++)
        {
            var square = 2.0 * j * j * range * range;
            var term = ((2 * square) - 1) * Math.Exp(-square);
            sum += term;
            if (Math.Abs(term) < Negligible * sum)
            {
                break;
            }
        }

        return Math.Clamp(2 * sum, 0, 1);
    }
}
