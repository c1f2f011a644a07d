using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ChannelAudit.Signals.Spectra;

/// <summary>Sums the cross-spectra conj(A)·B of segments over a range of bins to a mean density.</summary>
/// <remarks>The sign convention is SciPy's <c>csd(a, b)</c>. Each lane has a sum of its own; they are joined in a fixed
/// order at the end.</remarks>
public sealed class CrossAccumulator
{
    private readonly int _firstBin;
    private readonly int _binCount;
    private readonly AlignedBuffer _re;
    private readonly AlignedBuffer _im;

    /// <summary>Takes memory for the sums.</summary>
    /// <param name="firstBin">First bin of the range, from 0.</param>
    /// <param name="binCount">Number of bins, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public CrossAccumulator(int firstBin, int binCount)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(firstBin);
        ArgumentOutOfRangeException.ThrowIfLessThan(binCount, 1);
        _firstBin = firstBin;
        _binCount = binCount;
        _re = new AlignedBuffer(SegmentBatch.Lanes * binCount);
        _im = new AlignedBuffer(SegmentBatch.Lanes * binCount);
    }

    /// <summary>Gets the number of segments added.</summary>
    public int Segments { get; private set; }

    /// <summary>Adds segments of a pair of channels.</summary>
    /// <param name="batch">Batch with both channels loaded and all bins of the range.</param>
    /// <param name="channelA">The conjugated channel.</param>
    /// <param name="channelB">The other channel.</param>
    /// <param name="laneMask">Bit l stands for segment l; segments that were not loaded never count.</param>
    /// <exception cref="ArgumentException">The batch has too few bins.</exception>
    public void Add(SegmentBatch batch, int channelA, int channelB, int laneMask = 15)
    {
        Lengths.RequireAtLeast(batch.Bins, _firstBin + _binCount, nameof(batch));
        var mask = LanePower.Mask(laneMask, batch.Segments);
        var first = SegmentBatch.Lanes * _firstBin;
        ref var aRe = ref MemoryMarshal.GetReference(batch.Re(channelA)[first..]);
        ref var aIm = ref MemoryMarshal.GetReference(batch.Im(channelA)[first..]);
        ref var bRe = ref MemoryMarshal.GetReference(batch.Re(channelB)[first..]);
        ref var bIm = ref MemoryMarshal.GetReference(batch.Im(channelB)[first..]);
        ref var re = ref MemoryMarshal.GetReference(_re.Span);
        ref var im = ref MemoryMarshal.GetReference(_im.Span);
        for (nuint at = 0; at < (nuint)_re.Length; at += SegmentBatch.Lanes)
        {
            var (ar, ai) = (Vector256.LoadUnsafe(ref aRe, at), Vector256.LoadUnsafe(ref aIm, at));
            var (br, bi) = (Vector256.LoadUnsafe(ref bRe, at), Vector256.LoadUnsafe(ref bIm, at));
            (Vector256.LoadUnsafe(ref re, at) + (((ar * br) + (ai * bi)) & mask)).StoreUnsafe(ref re, at);
            (Vector256.LoadUnsafe(ref im, at) + (((ar * bi) - (ai * br)) & mask)).StoreUnsafe(ref im, at);
        }

        Segments += BitOperations.PopCount((uint)LanePower.Counted(laneMask, batch.Segments));
    }

    /// <summary>Gives the mean one-sided cross-density.</summary>
    /// <param name="shape">A batch of the rate and segment length of those added.</param>
    /// <param name="re">Takes the real part for each bin of the range, in the product of the units per hertz.</param>
    /// <param name="im">Takes the imaginary part, positive where B leads A.</param>
    /// <exception cref="ArgumentException">The shape does not fit or a span is too short.</exception>
    /// <exception cref="InvalidOperationException">No segment was added.</exception>
    public void Density(SegmentBatch shape, Span<double> re, Span<double> im)
    {
        Lengths.RequireAtLeast(shape.Bins, _firstBin + _binCount, nameof(shape));
        Lengths.RequireAtLeast(re.Length, _binCount, nameof(re));
        Lengths.RequireAtLeast(im.Length, _binCount, nameof(im));
        if (Segments == 0)
        {
            throw new InvalidOperationException("No segment was added, so there is no mean.");
        }

        for (var at = 0; at < _binCount; at++)
        {
            var scale = shape.DensityScale(_firstBin + at);
            re[at] = FourLaneSum.Of(_re.Span, at) * scale / Segments;
            im[at] = FourLaneSum.Of(_im.Span, at) * scale / Segments;
        }
    }

    /// <summary>Forgets all segments.</summary>
    public void Reset()
    {
        _re.Span.Clear();
        _im.Span.Clear();
        Segments = 0;
    }
}
