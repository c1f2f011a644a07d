using System.Runtime.InteropServices;
using ChannelAudit.Signals.Arithmetic;

namespace ChannelAudit.Signals.Spectra;

/// <summary>One pass of the transform: which radix, over which blocks, with which twiddle factors.</summary>
/// <remarks>
/// Stockham's autosort with decimation in frequency. With n the length still to be transformed, p the radix, m = n/p and
/// s the stride (the product of the radices already done):
/// y[q + s(p·j + r)] = ω_n^(j·r) · Σ_k x[q + s(j + m·k)] · ω_p^(k·r), j below m, q below s.
/// </remarks>
internal sealed class TransformStage
{
    private readonly double[] _twiddles;

    /// <summary>Prepares a pass.</summary>
    /// <param name="radix">2, 3, 4 or 5.</param>
    /// <param name="length">Length still to be transformed, a multiple of the radix.</param>
    /// <param name="stride">Product of the radices already done.</param>
    public TransformStage(int radix, int length, int stride)
    {
        Radix = radix;
        Blocks = length / radix;
        Stride = stride;
        _twiddles = new double[2 * Blocks * (radix - 1)];
        for (var j = 0; j < Blocks; j++)
        {
            for (var r = 1; r < radix; r++)
            {
                var (sin, cos) = RepeatableMath.SinCosOfPart((long)j * r, length);
                var entry = 2 * ((j * (radix - 1)) + r - 1);
                _twiddles[entry] = cos;
                _twiddles[entry + 1] = -sin;
            }
        }
    }

    /// <summary>Gets the radix p.</summary>
    public int Radix { get; }

    /// <summary>Gets m, the number of butterflies with twiddle factors of their own.</summary>
    public int Blocks { get; }

    /// <summary>Gets s, the number of butterflies that share twiddle factors.</summary>
    public int Stride { get; }

    /// <summary>Gets the first twiddle factor: pairs of real and imaginary part, p−1 for each block.</summary>
    public ref double Twiddles => ref MemoryMarshal.GetArrayDataReference(_twiddles);
}
