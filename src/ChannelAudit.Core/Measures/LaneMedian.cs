using System.Collections.Immutable;
using System.Runtime.Intrinsics;

namespace ChannelAudit.Measures;

/// <summary>The median of sixteen values in each of four lanes, by a sorting network: the same comparisons whatever the values.</summary>
/// <remarks>Odd-even merge sort: K. E. Batcher (1968), Sorting networks and their applications, AFIPS 32:307-314 (from memory; held to a plain sort in the tests).</remarks>
internal static class LaneMedian
{
    /// <summary>Values in each lane.</summary>
    public const int Count = 16;

    private static readonly ImmutableArray<(int Low, int High)> Network = MakeNetwork();

    /// <summary>The mean of the middle two; reorders the values.</summary>
    public static Vector256<double> InPlace(Span<Vector256<double>> values)
    {
        foreach ((int low, int high) in Network)
        {
            Vector256<double> a = values[low];
            Vector256<double> b = values[high];
            values[low] = Vector256.Min(a, b);
            values[high] = Vector256.Max(a, b);
        }

        return Vector256.Create(0.5) * (values[(Count / 2) - 1] + values[Count / 2]);
    }

    private static ImmutableArray<(int Low, int High)> MakeNetwork()
    {
        ImmutableArray<(int Low, int High)>.Builder network = ImmutableArray.CreateBuilder<(int Low, int High)>();
        for (int p = 1; p < Count; p *= 2)
        {
            for (int k = p; k >= 1; k /= 2)
            {
                AddStage(network, p, k);
            }
        }

        return network.ToImmutable();
    }

    private static void AddStage(ImmutableArray<(int Low, int High)>.Builder network, int p, int k)
    {
        for (int j = k % p; j + k < Count; j += 2 * k)
        {
            for (int i = 0; i < k && i + j + k < Count; i++)
            {
                if ((i + j) / (2 * p) == (i + j + k) / (2 * p))
                {
                    network.Add((i + j, i + j + k));
                }
            }
        }
    }
}
