using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace ChannelAudit.Signals.Spectra;

/// <summary>Lays segments side by side: mean removed, weighted, sample n of segment l at n·4+l.</summary>
internal static class LaneLoader
{
    /// <summary>Fills the four lanes.</summary>
    /// <param name="samples">The signal from the first segment's first sample on.</param>
    /// <param name="hop">Samples between the starts of segments.</param>
    /// <param name="segments">Number of segments, 1 to 4.</param>
    /// <param name="window">One weight for each sample of a segment.</param>
    /// <param name="lanes">Takes four values for each weight.</param>
    public static void Load(ReadOnlySpan<double> samples, int hop, int segments, ReadOnlySpan<double> window, Span<double> lanes)
    {
        if (segments == SegmentBatch.Lanes)
        {
            LoadFour(samples, hop, window, lanes);
            return;
        }

        lanes.Clear();
        for (var lane = 0; lane < segments; lane++)
        {
            var segment = samples.Slice(lane * hop, window.Length);
            var mean = Mean(segment);
            for (var n = 0; n < segment.Length; n++)
            {
                lanes[(SegmentBatch.Lanes * n) + lane] = (segment[n] - mean) * window[n];
            }
        }
    }

    private static void LoadFour(ReadOnlySpan<double> samples, int hop, ReadOnlySpan<double> window, Span<double> lanes)
    {
        var first = samples[..window.Length];
        var second = samples.Slice(hop, window.Length);
        var third = samples.Slice(2 * hop, window.Length);
        var fourth = samples.Slice(3 * hop, window.Length);
        var means = Vector256.Create(Mean(first), Mean(second), Mean(third), Mean(fourth));
        lanes = lanes[..(SegmentBatch.Lanes * window.Length)];
        ref var target = ref MemoryMarshal.GetReference(lanes);
        var n = 0;
        if (Avx.IsSupported)
        {
            // The same subtractions and products, four samples at a time; only the way into the lanes differs.
            for (; n + 4 <= window.Length; n += 4)
            {
                var weights = Take(window, n);
                Interleave(
                    (Take(first, n) - Vector256.Create(means[0])) * weights,
                    (Take(second, n) - Vector256.Create(means[1])) * weights,
                    (Take(third, n) - Vector256.Create(means[2])) * weights,
                    (Take(fourth, n) - Vector256.Create(means[3])) * weights,
                    ref Unsafe.Add(ref target, SegmentBatch.Lanes * n));
            }
        }

        for (; n < window.Length; n++)
        {
            var values = Vector256.Create(first[n], second[n], third[n], fourth[n]);
            ((values - means) * Vector256.Create(window[n])).StoreUnsafe(ref target, (nuint)(SegmentBatch.Lanes * n));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Take(ReadOnlySpan<double> values, int at) =>
        Vector256.LoadUnsafe(ref MemoryMarshal.GetReference(values), (nuint)at);

    /// <summary>Writes four by four numbers with rows and columns exchanged.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Interleave(
        Vector256<double> a, Vector256<double> b, Vector256<double> c, Vector256<double> d, ref double target)
    {
        var (even, odd) = (Avx.UnpackLow(a, b), Avx.UnpackHigh(a, b));
        var (evenEnd, oddEnd) = (Avx.UnpackLow(c, d), Avx.UnpackHigh(c, d));
        Avx.Permute2x128(even, evenEnd, 0x20).StoreUnsafe(ref target);
        Avx.Permute2x128(odd, oddEnd, 0x20).StoreUnsafe(ref target, 4);
        Avx.Permute2x128(even, evenEnd, 0x31).StoreUnsafe(ref target, 8);
        Avx.Permute2x128(odd, oddEnd, 0x31).StoreUnsafe(ref target, 12);
    }

    /// <summary>Sums in sixteen strands, joined in a fixed order: fast, and the same bits everywhere.</summary>
    private static double Mean(ReadOnlySpan<double> segment)
    {
        ref var origin = ref MemoryMarshal.GetReference(segment);
        var (a, b, c, d) = (Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero);
        var n = 0;
        for (; n + 16 <= segment.Length; n += 16)
        {
            a += Vector256.LoadUnsafe(ref origin, (nuint)n);
            b += Vector256.LoadUnsafe(ref origin, (nuint)(n + 4));
            c += Vector256.LoadUnsafe(ref origin, (nuint)(n + 8));
            d += Vector256.LoadUnsafe(ref origin, (nuint)(n + 12));
        }

        var joined = (a + b) + (c + d);
        var sum = (joined[0] + joined[1]) + (joined[2] + joined[3]);
        for (; n < segment.Length; n++)
        {
            sum += segment[n];
        }

        return sum / segment.Length;
    }
}
