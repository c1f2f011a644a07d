namespace ChannelAudit.Signals.Trends;

/// <summary>Cumulative sums against a target, in table form (Page 1954; NIST/SEMATECH e-Handbook, section 6.3.2.3).</summary>
/// <remarks>Up: S_i = max(0, S_(i−1) + x_i − target − k). Down: T_i = max(0, T_(i−1) + target − k − x_i). Both start at 0. A sum above h is a signal.</remarks>
/// <param name="Up">What has gathered above the target, after each value; 0 or more, in the unit of the values.</param>
/// <param name="Down">What has gathered below it.</param>
public sealed record Cusum(double[] Up, double[] Down)
{
    /// <summary>Gives the sums after each value.</summary>
    /// <param name="values">Finite values in order of time; left as they are.</param>
    /// <param name="target">The value that nothing is gathered at.</param>
    /// <param name="allowance">k, the distance from the target that is let pass, 0 or more; half of the change that matters.</param>
    public static Cusum Of(ReadOnlySpan<double> values, double target, double allowance)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(allowance);
        var sums = new Cusum(new double[values.Length], new double[values.Length]);
        double up = 0, down = 0;
        for (var i = 0; i < values.Length; i++)
        {
            up = sums.Up[i] = Math.Max(0, up + values[i] - target - allowance);
            down = sums.Down[i] = Math.Max(0, down + target - allowance - values[i]);
        }

        return sums;
    }

    /// <summary>The first value, from a place on, after which the sum that gathers in one direction is above a limit; -1 when none is.</summary>
    /// <param name="limit">h.</param>
    /// <param name="isUp">Which sum.</param>
    /// <param name="from">The first place that counts, from 0.</param>
    public int FirstBeyond(double limit, bool isUp, int from = 0)
    {
        var sums = isUp ? Up : Down;
        var place = Array.FindIndex(sums, Math.Min(from, sums.Length), sum => sum > limit);
        return place;
    }
}
