namespace ChannelAudit.Signals.Trends;

/// <summary>Probabilities corrected for how many were looked at, by steps from the smallest on (Holm 1979).</summary>
/// <remarks>Whatever depends on what: the chance of calling anything significant where nothing is stays at or below the level asked for.</remarks>
public static class HolmCorrection
{
    /// <summary>Corrects probabilities.</summary>
    /// <param name="probabilities">From 0 to 1, in any order; left as they are.</param>
    /// <returns>In the same order: of the i-th smallest of m the largest so far of (m − i + 1)·p, at most 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A probability is out of range or not a number.</exception>
    public static double[] Of(ReadOnlySpan<double> probabilities)
    {
        var order = new int[probabilities.Length];
        for (var i = 0; i < order.Length; i++)
        {
            if (!(probabilities[i] is >= 0 and <= 1))
            {
                throw new ArgumentOutOfRangeException(nameof(probabilities), probabilities[i], "A probability is between 0 and 1.");
            }

            order[i] = i;
        }

        Array.Sort(probabilities.ToArray(), order);
        var corrected = new double[order.Length];
        double most = 0;
        for (var rank = 0; rank < order.Length; rank++)
        {
            most = Math.Max(most, Math.Min(1, (order.Length - rank) * probabilities[order[rank]]));
            corrected[order[rank]] = most;
        }

        return corrected;
    }
}
