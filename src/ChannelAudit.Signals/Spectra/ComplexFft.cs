using System.Runtime.InteropServices;

namespace ChannelAudit.Signals.Spectra;

/// <summary>Complex transform of four lanes at once, of any length 2^a·3^b·5^c.</summary>
/// <remarks>
/// Stockham's autosort algorithm (see Van Loan 1992, Computational Frameworks for the FFT, section 1.7; page from
/// memory): passes go to and fro between two buffers and need no reordering. The instance owns its buffers.
/// </remarks>
internal sealed class ComplexFft
{
    private readonly TransformStage[] _stages;
    private readonly AlignedBuffer _ping;
    private readonly AlignedBuffer _pong;

    /// <summary>Prepares passes and buffers.</summary>
    /// <param name="length">Length in complex numbers, without prime factors above 5.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is not positive or has another prime factor.</exception>
    public ComplexFft(int length)
    {
        Length = length;
        _stages = Plan(length);
        _ping = new AlignedBuffer(length * ComplexLanes.Doubles);
        _pong = new AlignedBuffer(length * ComplexLanes.Doubles);
    }

    /// <summary>Gets the length in complex numbers.</summary>
    public int Length { get; }

    /// <summary>Says whether a length has no prime factor above 5.</summary>
    public static bool Supports(int length)
    {
        if (length < 1)
        {
            return false;
        }

        foreach (var prime in (ReadOnlySpan<int>)[2, 3, 5])
        {
            while (length % prime == 0)
            {
                length /= prime;
            }
        }

        return length == 1;
    }

    /// <summary>Transforms X[k] = Σ x[n]·exp(−2πi·n·k/length).</summary>
    /// <param name="source">Length·8 doubles: four real parts, four imaginary parts, and so on; left as it is.</param>
    /// <returns>The spectrum in the same layout, valid until the next call.</returns>
    public ReadOnlySpan<double> Forward(ReadOnlySpan<double> source)
    {
        source = source[.._ping.Length];
        var target = _ping;
        foreach (var stage in _stages)
        {
            Run(stage, ref MemoryMarshal.GetReference(source), ref MemoryMarshal.GetReference(target.Span));
            source = target.Span;
            target = ReferenceEquals(target, _ping) ? _pong : _ping;
        }

        return source;
    }

    private static void Run(TransformStage stage, ref double source, ref double target)
    {
        switch (stage.Radix)
        {
            case 2:
                Radix2.Run(stage, ref source, ref target);
                break;
            case 3:
                Radix3.Run(stage, ref source, ref target);
                break;
            case 4:
                Radix4.Run(stage, ref source, ref target);
                break;
            default:
                Radix5.Run(stage, ref source, ref target);
                break;
        }
    }

    /// <summary>Splits the length into passes, the dearest radix last, where no twiddle factor is left.</summary>
    private static TransformStage[] Plan(int length)
    {
        if (!Supports(length))
        {
            throw new ArgumentOutOfRangeException(nameof(length), length, "Only the prime factors 2, 3 and 5 are possible.");
        }

        var stages = new List<TransformStage>();
        var left = length;
        foreach (var radix in (ReadOnlySpan<int>)[4, 2, 3, 5])
        {
            while (left % radix == 0)
            {
                stages.Add(new TransformStage(radix, left, length / left));
                left /= radix;
            }
        }

        return [.. stages];
    }
}
