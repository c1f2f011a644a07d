using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using ChannelAudit.Signals.Arithmetic;

namespace ChannelAudit.Signals.Spectra;

/// <summary>Real transform of any length, as a convolution with a chirp.</summary>
/// <remarks>
/// Bluestein (1970): with n·k = (n² + k² − (k−n)²)/2 the transform becomes a convolution, done here by a complex
/// transform of a length 2^a·3^b·5^c of at least 2N−1. About three times the work of the direct path; the relative
/// error stays near 1E-14.
/// </remarks>
internal sealed class Bluestein
{
    private readonly int _length;
    private readonly double[] _chirp;
    private readonly double[] _filter;
    private readonly double[] _work;
    private readonly ComplexFft _fft;

    /// <summary>Prepares chirp and filter.</summary>
    /// <param name="length">Length N of the real signal, at least 1.</param>
    public Bluestein(int length)
    {
        _length = length;
        _fft = new ComplexFft(GoodLength((2 * length) - 1));
        _work = new double[_fft.Length * ComplexLanes.Doubles];
        _chirp = new double[2 * length];
        for (var n = 0; n < length; n++)
        {
            var (sin, cos) = RepeatableMath.SinCosOfPart((long)n * n, 2L * length);
            _chirp[2 * n] = cos;
            _chirp[(2 * n) + 1] = -sin;
        }

        _filter = Filter();
    }

    /// <summary>Writes bins 0 to N/2 of four lanes.</summary>
    /// <param name="lanes">Samples, n·4+lane.</param>
    /// <param name="re">Real parts, bin·4+lane.</param>
    /// <param name="im">Imaginary parts, bin·4+lane.</param>
    public void Run(ReadOnlySpan<double> lanes, Span<double> re, Span<double> im)
    {
        ref var work = ref MemoryMarshal.GetArrayDataReference(_work);
        ref var chirp = ref MemoryMarshal.GetArrayDataReference(_chirp);
        _work.AsSpan().Clear();
        for (var n = 0; n < _length; n++)
        {
            var sample = Vector256.Create(lanes.Slice(4 * n, 4));
            var factor = ComplexLanes.Broadcast(ref chirp, n);
            new ComplexLanes(sample * factor.Re, sample * factor.Im).Store(ref work, n * ComplexLanes.Doubles);
        }

        Convolve(ref work);
        var result = _fft.Forward(_work);
        for (var k = 0; k <= _length / 2; k++)
        {
            var bin = ComplexLanes.Load(ref MemoryMarshal.GetReference(result), k * ComplexLanes.Doubles).Swap();
            var value = bin * ComplexLanes.Broadcast(ref chirp, k);
            value.Re.CopyTo(re.Slice(4 * k, 4));
            value.Im.CopyTo(im.Slice(4 * k, 4));
        }
    }

    /// <summary>Multiplies the spectrum by the filter and swaps the parts: a forward transform of it is the inverse.</summary>
    private void Convolve(ref double work)
    {
        ref var filter = ref MemoryMarshal.GetArrayDataReference(_filter);
        var spectrum = _fft.Forward(_work);
        for (var k = 0; k < _fft.Length; k++)
        {
            var bin = ComplexLanes.Load(ref MemoryMarshal.GetReference(spectrum), k * ComplexLanes.Doubles);
            (bin * ComplexLanes.Broadcast(ref filter, k)).Swap().Store(ref work, k * ComplexLanes.Doubles);
        }
    }

    /// <summary>Gives the spectrum of the conjugate chirp, folded at both ends, divided by the length of the transform.</summary>
    private double[] Filter()
    {
        for (var n = 0; n < _length; n++)
        {
            var mirror = (_fft.Length - n) % _fft.Length;
            _work[n * ComplexLanes.Doubles] = _work[mirror * ComplexLanes.Doubles] = _chirp[2 * n];
            _work[(n * ComplexLanes.Doubles) + 4] = _work[(mirror * ComplexLanes.Doubles) + 4] = -_chirp[(2 * n) + 1];
        }

        var spectrum = _fft.Forward(_work);
        var filter = new double[2 * _fft.Length];
        for (var k = 0; k < _fft.Length; k++)
        {
            filter[2 * k] = spectrum[k * ComplexLanes.Doubles] / _fft.Length;
            filter[(2 * k) + 1] = spectrum[(k * ComplexLanes.Doubles) + 4] / _fft.Length;
        }

        return filter;
    }

    private static int GoodLength(int atLeast)
    {
        while (!ComplexFft.Supports(atLeast))
        {
            atLeast++;
        }

        return atLeast;
    }
}
