using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using ChannelAudit.Signals.Arithmetic;

namespace ChannelAudit.Signals.Spectra;

/// <summary>Takes the spectrum of a real signal out of a complex transform of half its length.</summary>
/// <remarks>
/// With z[n] = x[2n] + i·x[2n+1], M = N/2 and Z its transform: X[k] = (Z[k] + Z*[M−k])/2 − i·ω_N^k·(Z[k] − Z*[M−k])/2,
/// and X[M−k] is the conjugate of the same sum with the other sign.
/// </remarks>
internal sealed class RealSplit
{
    private readonly int _half;
    private readonly double[] _twiddles;

    /// <summary>Prepares the factors ω_N^k.</summary>
    /// <param name="length">Even length N of the real signal.</param>
    public RealSplit(int length)
    {
        _half = length / 2;
        _twiddles = new double[2 * ((_half / 2) + 1)];
        for (var k = 0; k <= _half / 2; k++)
        {
            var (sin, cos) = RepeatableMath.SinCosOfPart(k, length);
            _twiddles[2 * k] = cos / 2;
            _twiddles[(2 * k) + 1] = -sin / 2;
        }
    }

    /// <summary>Writes bins 0 to N/2 of four lanes.</summary>
    /// <param name="spectrum">Z: N/2 elements of eight doubles.</param>
    /// <param name="re">Real parts, bin·4+lane.</param>
    /// <param name="im">Imaginary parts, bin·4+lane.</param>
    public void Run(ReadOnlySpan<double> spectrum, Span<double> re, Span<double> im)
    {
        ref var z = ref MemoryMarshal.GetReference(spectrum);
        ref var real = ref MemoryMarshal.GetReference(re[..(4 * (_half + 1))]);
        ref var imaginary = ref MemoryMarshal.GetReference(im[..(4 * (_half + 1))]);
        ref var twiddles = ref MemoryMarshal.GetArrayDataReference(_twiddles);
        var first = ComplexLanes.Load(ref z, 0);
        Put(ref real, ref imaginary, 0, first.Re + first.Im, Vector256<double>.Zero);
        Put(ref real, ref imaginary, _half, first.Re - first.Im, Vector256<double>.Zero);
        for (var k = 1; k <= _half / 2; k++)
        {
            var low = ComplexLanes.Load(ref z, k * ComplexLanes.Doubles);
            var high = ComplexLanes.Load(ref z, (_half - k) * ComplexLanes.Doubles);
            var half = Vector256.Create(0.5);
            var even = new ComplexLanes((low.Re + high.Re) * half, (low.Im - high.Im) * half);
            var odd = new ComplexLanes(low.Im + high.Im, high.Re - low.Re) * ComplexLanes.Broadcast(ref twiddles, k);
            Put(ref real, ref imaginary, k, even.Re + odd.Re, even.Im + odd.Im);
            Put(ref real, ref imaginary, _half - k, even.Re - odd.Re, odd.Im - even.Im);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Put(ref double re, ref double im, int bin, Vector256<double> real, Vector256<double> imaginary)
    {
        real.StoreUnsafe(ref re, (nuint)(4 * bin));
        imaginary.StoreUnsafe(ref im, (nuint)(4 * bin));
    }
}
