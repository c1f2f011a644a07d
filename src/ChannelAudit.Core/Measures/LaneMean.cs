using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ChannelAudit.Measures;

/// <summary>The mean of some samples, summed in four lanes in a fixed order: the same bits on every machine.</summary>
internal static class LaneMean
{
    /// <summary>The mean of one or more values.</summary>
    public static double Of(ReadOnlySpan<double> values)
    {
        ReadOnlySpan<Vector256<double>> lanes = MemoryMarshal.Cast<double, Vector256<double>>(values);
        Vector256<double> sums = Vector256<double>.Zero;
        foreach (Vector256<double> lane in lanes)
        {
            sums += lane;
        }

        double total = (sums[0] + sums[1]) + (sums[2] + sums[3]);
        for (int at = lanes.Length * Vector256<double>.Count; at < values.Length; at++)
        {
            total += values[at];
        }

        return total / values.Length;
    }
}
