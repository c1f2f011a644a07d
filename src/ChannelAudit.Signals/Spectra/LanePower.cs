using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ChannelAudit.Signals.Spectra;

/// <summary>Elementwise products of spectra, four lanes a step; all spans are multiples of four long.</summary>
internal static class LanePower
{
    /// <summary>Writes |X|².</summary>
    public static void Write(ReadOnlySpan<double> re, ReadOnlySpan<double> im, Span<double> power)
    {
        Lengths.RequireAtLeast(im.Length, re.Length, nameof(im));
        Lengths.RequireAtLeast(power.Length, re.Length, nameof(power));
        ref var real = ref MemoryMarshal.GetReference(re);
        ref var imaginary = ref MemoryMarshal.GetReference(im);
        ref var target = ref MemoryMarshal.GetReference(power);
        for (nuint at = 0; at < (nuint)re.Length; at += SegmentBatch.Lanes)
        {
            var a = Vector256.LoadUnsafe(ref real, at);
            var b = Vector256.LoadUnsafe(ref imaginary, at);
            ((a * a) + (b * b)).StoreUnsafe(ref target, at);
        }
    }

    /// <summary>Adds |X|² of the lanes in the mask.</summary>
    public static void Add(ReadOnlySpan<double> re, ReadOnlySpan<double> im, Vector256<double> mask, Span<double> sums)
    {
        Lengths.RequireAtLeast(im.Length, re.Length, nameof(im));
        Lengths.RequireAtLeast(sums.Length, re.Length, nameof(sums));
        ref var real = ref MemoryMarshal.GetReference(re);
        ref var imaginary = ref MemoryMarshal.GetReference(im);
        ref var target = ref MemoryMarshal.GetReference(sums);
        for (nuint at = 0; at < (nuint)re.Length; at += SegmentBatch.Lanes)
        {
            var a = Vector256.LoadUnsafe(ref real, at);
            var b = Vector256.LoadUnsafe(ref imaginary, at);
            (Vector256.LoadUnsafe(ref target, at) + (((a * a) + (b * b)) & mask)).StoreUnsafe(ref target, at);
        }
    }

    /// <summary>Multiplies in place.</summary>
    public static void Scale(Span<double> values, double factor)
    {
        foreach (ref var value in values)
        {
            value *= factor;
        }
    }

    /// <summary>Turns bits 0 to 3 into a mask of lanes; lanes without a segment never count.</summary>
    public static Vector256<double> Mask(int laneMask, int segments)
    {
        var bits = Counted(laneMask, segments);
        return Vector256.Create(-(bits & 1L), -((bits >> 1) & 1L), -((bits >> 2) & 1L), -((bits >> 3) & 1L)).AsDouble();
    }

    /// <summary>Gives the bits of the mask that stand for loaded segments.</summary>
    public static int Counted(int laneMask, int segments) => laneMask & ((1 << segments) - 1);
}
