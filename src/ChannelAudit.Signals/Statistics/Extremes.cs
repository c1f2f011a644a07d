using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ChannelAudit.Signals.Statistics;

/// <summary>The least and the greatest of many values in one pass.</summary>
public static class Extremes
{
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
        if (values.Length >= Vector256<double>.Count)
        {
            ReadOnlySpan<Vector256<double>> lanes = MemoryMarshal.Cast<double, Vector256<double>>(values);
            Vector256<double> low = lanes[0];
            Vector256<double> high = lanes[0];
            foreach (Vector256<double> lane in lanes)
            {
                low = Vector256.Min(low, lane);
                high = Vector256.Max(high, lane);
            }

            for (int lane = 0; lane < Vector256<double>.Count; lane++)
            {
                least = Math.Min(least, low[lane]);
                greatest = Math.Max(greatest, high[lane]);
            }

            at = lanes.Length * Vector256<double>.Count;
        }

        for (; at < values.Length; at++)
        {
            least = Math.Min(least, values[at]);
            greatest = Math.Max(greatest, values[at]);
        }

        return (least, greatest);
    }
}
