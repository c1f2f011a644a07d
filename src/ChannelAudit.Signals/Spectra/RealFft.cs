namespace ChannelAudit.Signals.Spectra;

/// <summary>Discrete Fourier transform of real signals, four at a time: X[k] = Σ x[n]·exp(−2πi·n·k/N), not scaled.</summary>
/// <remarks>
/// <para>Even lengths 2^a·3^b·5^c take a complex transform of half the length (Stockham's autosort, radices 4, 2, 3, 5).
/// All other lengths take Bluestein's (1970) detour, which costs about three times as much.</para>
/// <para>Only elementwise additions and multiplications are used, none of them fused, and the factors are computed the
/// same way everywhere: the same input gives the same bits on every processor, and a lane's result does not depend on the
/// other lanes. An instance owns scratch memory, so it serves one thread at a time; make one a thread.</para>
/// </remarks>
public sealed class RealFft
{
    private readonly ComplexFft? _half;
    private readonly RealSplit? _split;
    private readonly Bluestein? _fallback;
    private AlignedBuffer? _lanes;

    private RealFft(int length)
    {
        Length = length;
        if (length % 2 == 0 && ComplexFft.Supports(length / 2))
        {
            _half = new ComplexFft(length / 2);
            _split = new RealSplit(length);
        }
        else
        {
            _fallback = new Bluestein(length);
        }
    }

    /// <summary>Gets the length N of the signals in samples.</summary>
    public int Length { get; }

    /// <summary>Gets the number of bins, N/2 + 1 with the division rounded down.</summary>
    public int Bins => (Length / 2) + 1;

    /// <summary>Makes a transform with scratch memory of its own.</summary>
    /// <param name="length">Length in samples, 1 to 2^26.</param>
    /// <returns>A transform for one thread at a time.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is out of range.</exception>
    public static RealFft For(int length)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(length, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(length, 1 << 26);
        return new RealFft(length);
    }

    /// <summary>Transforms one signal, with the same bits as a lane of <see cref="TransformFour"/>.</summary>
    /// <param name="samples">N samples; left as they are.</param>
    /// <param name="re">Takes the real parts, at least <see cref="Bins"/> long.</param>
    /// <param name="im">Takes the imaginary parts, likewise.</param>
    /// <exception cref="ArgumentException">A span has the wrong length.</exception>
    public void Transform(ReadOnlySpan<double> samples, Span<double> re, Span<double> im)
    {
        Lengths.RequireExactly(samples.Length, Length, nameof(samples));
        Lengths.RequireAtLeast(re.Length, Bins, nameof(re));
        Lengths.RequireAtLeast(im.Length, Bins, nameof(im));
        _lanes ??= new AlignedBuffer(4 * (Length + (2 * Bins)));
        var input = _lanes.Span[..(4 * Length)];
        for (var n = 0; n < samples.Length; n++)
        {
            input[4 * n] = samples[n];
        }

        var real = _lanes.Span.Slice(4 * Length, 4 * Bins);
        var imaginary = _lanes.Span.Slice(4 * (Length + Bins), 4 * Bins);
        TransformFour(input, real, imaginary);
        for (var bin = 0; bin < Bins; bin++)
        {
            re[bin] = real[4 * bin];
            im[bin] = imaginary[4 * bin];
        }
    }

    /// <summary>Transforms four signals at once.</summary>
    /// <param name="lanes">4·N samples: sample n of signal l at n·4+l; left as they are.</param>
    /// <param name="re">Takes the real parts at bin·4+l, at least 4·<see cref="Bins"/> long, not overlapping the input.</param>
    /// <param name="im">Takes the imaginary parts, likewise.</param>
    /// <exception cref="ArgumentException">A span has the wrong length.</exception>
    public void TransformFour(ReadOnlySpan<double> lanes, Span<double> re, Span<double> im)
    {
        Lengths.RequireExactly(lanes.Length, 4 * Length, nameof(lanes));
        Lengths.RequireAtLeast(re.Length, 4 * Bins, nameof(re));
        Lengths.RequireAtLeast(im.Length, 4 * Bins, nameof(im));
        if (_half is not null && _split is not null)
        {
            // Four even samples and four odd ones are already a complex number a lane.
            _split.Run(_half.Forward(lanes), re, im);
        }
        else
        {
            _fallback?.Run(lanes, re, im);
        }
    }
}
