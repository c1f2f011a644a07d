using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ChannelAudit.Measures;

/// <summary>Sums over bins of the spectra of four segments at once, one lane each.</summary>
internal static class LaneSums
{
    /// <summary>Sum of the squared magnitude.</summary>
    /// <param name="ranges">The bins.</param>
    /// <param name="re">Real parts, [bin x 4 + lane].</param>
    /// <param name="im">Imaginary parts.</param>
    public static Vector256<double> Power(ImmutableArray<BinRange> ranges, ReadOnlySpan<double> re, ReadOnlySpan<double> im)
    {
        ReadOnlySpan<Vector256<double>> real = MemoryMarshal.Cast<double, Vector256<double>>(re);
        ReadOnlySpan<Vector256<double>> imaginary = MemoryMarshal.Cast<double, Vector256<double>>(im);
        Vector256<double> sum = Vector256<double>.Zero;
        foreach (BinRange range in ranges)
        {
            for (int bin = range.From; bin <= range.To; bin++)
            {
                sum += (real[bin] * real[bin]) + (imaginary[bin] * imaginary[bin]);
            }
        }

        return sum;
    }

    /// <summary>Sum of conj(A) x B: its real and imaginary part.</summary>
    public static (Vector256<double> Re, Vector256<double> Im) Cross(
        ImmutableArray<BinRange> ranges,
        ReadOnlySpan<double> reA,
        ReadOnlySpan<double> imA,
        ReadOnlySpan<double> reB,
        ReadOnlySpan<double> imB)
    {
        ReadOnlySpan<Vector256<double>> realA = MemoryMarshal.Cast<double, Vector256<double>>(reA);
        ReadOnlySpan<Vector256<double>> imaginaryA = MemoryMarshal.Cast<double, Vector256<double>>(imA);
        ReadOnlySpan<Vector256<double>> realB = MemoryMarshal.Cast<double, Vector256<double>>(reB);
        ReadOnlySpan<Vector256<double>> imaginaryB = MemoryMarshal.Cast<double, Vector256<double>>(imB);
        Vector256<double> real = Vector256<double>.Zero;
        Vector256<double> imaginary = Vector256<double>.Zero;
        foreach (BinRange range in ranges)
        {
            for (int bin = range.From; bin <= range.To; bin++)
            {
                real += (realA[bin] * realB[bin]) + (imaginaryA[bin] * imaginaryB[bin]);
                imaginary += (realA[bin] * imaginaryB[bin]) - (imaginaryA[bin] * realB[bin]);
            }
        }

        return (real, imaginary);
    }
}
