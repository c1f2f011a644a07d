using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ChannelAudit.Signals.Statistics;

/// <summary>The least and the greatest of many values in one pass.</summary>
public static class Extremes
{
    private static readonly int Step = 2 * Vector256<double>.Count;

    /// <summary>Least and greatest value.</summary>
    /// <param name="values">One value or more, none NaN; not changed.</param>
    /// <exception cref="ArgumentException">When there is no value.</exception>
    public static (double Least, double Greatest) Of(ReadOnlySpan<double> values)
    {
        if (values.IsEmpty)
        {
            throw new ArgumentException("at least one value is needed", nameof(values));
        }

        double least = values[0];
        double greatest = values[0];
        int at = 0;
        if (values.Length >= Step)
        {
            ReadOnlySpan<Vector256<double>> lanes = MemoryMarshal.Cast<double, Vector256<double>>(values);
            Vector256<double> low = lanes[0];
            Vector256<double> high = lanes[0];
            Vector256<double> low2 = lanes[1];
            Vector256<double> high2 = lanes[1];

            // Two chains, so that one comparison need not wait for the last; the native ones may order zeros and NaN as they like.
            for (; at + Step <= values.Length; at += Step)
            {
                int pair = at / Vector256<double>.Count;
                low = Vector256.MinNative(low, lanes[pair]);
                high = Vector256.MaxNative(high, lanes[pair]);
                low2 = Vector256.MinNative(low2, lanes[pair + 1]);
                high2 = Vector256.MaxNative(high2, lanes[pair + 1]);
            }

            low = Vector256.MinNative(low, low2);
            high = Vector256.MaxNative(high, high2);
            for (int lane = 0; lane < Vector256<double>.Count; lane++)
            {
                least = Math.Min(least, low[lane]);
                greatest = Math.Max(greatest, high[lane]);
            }
        }

        for (; at < values.Length; at++)
        {
            least = Math.Min(least, values[at]);
            greatest = Math.Max(greatest, values[at]);
        }

        return (least, greatest);
    }
}
