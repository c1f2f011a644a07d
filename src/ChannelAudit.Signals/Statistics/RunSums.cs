namespace ChannelAudit.Signals.Statistics;

/// <summary>Sums of neighbouring runs of equal length, each added up in order.</summary>
/// <remarks>
/// One sum alone waits for every addition; four side by side wait for none. Every sum has the bits that a plain loop over its run gives.
/// </remarks>
public static class RunSums
{
    /// <summary>Runs that are summed at a time.</summary>
    public const int Runs = 4;

    /// <summary>The sums of four runs.</summary>
    /// <param name="values">Four runs, one behind the other; what follows is not looked at.</param>
    /// <param name="length">Values in a run, at least 0.</param>
    /// <param name="sums">Takes four sums.</param>
    /// <exception cref="ArgumentOutOfRangeException">When there are fewer values, or less room.</exception>
    public static void Of(ReadOnlySpan<double> values, int length, Span<double> sums)
    {
        ReadOnlySpan<double> first = values[..length];
        ReadOnlySpan<double> second = values.Slice(length, length);
        ReadOnlySpan<double> third = values.Slice(2 * length, length);
        ReadOnlySpan<double> fourth = values.Slice(3 * length, length);
        double a = 0, b = 0, c = 0, d = 0;
        for (int i = 0; i < first.Length; i++)
        {
            a += first[i];
            b += second[i];
            c += third[i];
            d += fourth[i];
        }

        (sums[0], sums[1], sums[2], sums[3]) = (a, b, c, d);
    }

    /// <summary>The same of the magnitudes.</summary>
    /// <inheritdoc cref="Of"/>
    public static void OfMagnitudes(ReadOnlySpan<double> values, int length, Span<double> sums)
    {
        ReadOnlySpan<double> first = values[..length];
        ReadOnlySpan<double> second = values.Slice(length, length);
        ReadOnlySpan<double> third = values.Slice(2 * length, length);
        ReadOnlySpan<double> fourth = values.Slice(3 * length, length);
        double a = 0, b = 0, c = 0, d = 0;
        for (int i = 0; i < first.Length; i++)
        {
            a += Math.Abs(first[i]);
            b += Math.Abs(second[i]);
            c += Math.Abs(third[i]);
            d += Math.Abs(fourth[i]);
        }

        (sums[0], sums[1], sums[2], sums[3]) = (a, b, c, d);
    }
}
