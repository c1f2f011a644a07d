using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ChannelAudit.Signals.Spectra;

/// <summary>Sums the cross-spectra conj(A)·B of segments and the powers of both channels over a range of bins, in one pass over the spectra.</summary>
/// <remarks>The same products and sums as those of <see cref="CrossAccumulator"/> and <see cref="PowerAccumulator"/>, bit for bit.</remarks>
public sealed class PairAccumulator
{
    private readonly int _firstBin;
    private readonly int _binCount;
    private readonly AlignedBuffer _re;
    private readonly AlignedBuffer _im;
    private readonly AlignedBuffer _powerA;
    private readonly AlignedBuffer _powerB;

    /// <summary>Takes memory for the sums.</summary>
    /// <param name="firstBin">First bin of the range, from 0.</param>
    /// <param name="binCount">Number of bins, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public PairAccumulator(int firstBin, int binCount)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(firstBin);
        ArgumentOutOfRangeException.ThrowIfLessThan(binCount, 1);
        _firstBin = firstBin;
        _binCount = binCount;
        _re = new AlignedBuffer(SegmentBatch.Lanes * binCount);
        _im = new AlignedBuffer(SegmentBatch.Lanes * binCount);
        _powerA = new AlignedBuffer(SegmentBatch.Lanes * binCount);
        _powerB = new AlignedBuffer(SegmentBatch.Lanes * binCount);
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
        ref var powerA = ref MemoryMarshal.GetReference(_powerA.Span);
        ref var powerB = ref MemoryMarshal.GetReference(_powerB.Span);
        for (nuint at = 0; at < (nuint)_re.Length; at += SegmentBatch.Lanes)
        {
            var (ar, ai) = (Vector256.LoadUnsafe(ref aRe, at), Vector256.LoadUnsafe(ref aIm, at));
            var (br, bi) = (Vector256.LoadUnsafe(ref bRe, at), Vector256.LoadUnsafe(ref bIm, at));
            (Vector256.LoadUnsafe(ref re, at) + (((ar * br) + (ai * bi)) & mask)).StoreUnsafe(ref re, at);
            (Vector256.LoadUnsafe(ref im, at) + (((ar * bi) - (ai * br)) & mask)).StoreUnsafe(ref im, at);
            (Vector256.LoadUnsafe(ref powerA, at) + (((ar * ar) + (ai * ai)) & mask)).StoreUnsafe(ref powerA, at);
            (Vector256.LoadUnsafe(ref powerB, at) + (((br * br) + (bi * bi)) & mask)).StoreUnsafe(ref powerB, at);
        }

        Segments += BitOperations.PopCount((uint)LanePower.Counted(laneMask, batch.Segments));
    }

    /// <summary>Gives the mean one-sided densities for each bin of the range.</summary>
    /// <param name="shape">A batch of the rate and segment length of those added.</param>
    /// <param name="re">Takes the real part of the cross-density, in the product of the units per hertz.</param>
    /// <param name="im">Takes its imaginary part, positive where B leads A.</param>
    /// <param name="densityA">Takes the density of A, in squared unit per hertz.</param>
    /// <param name="densityB">Takes that of B.</param>
    /// <exception cref="ArgumentException">The shape does not fit or a span is too short.</exception>
    /// <exception cref="InvalidOperationException">No segment was added.</exception>
    public void Density(SegmentBatch shape, Span<double> re, Span<double> im, Span<double> densityA, Span<double> densityB)
    {
        Lengths.RequireAtLeast(shape.Bins, _firstBin + _binCount, nameof(shape));
        Lengths.RequireAtLeast(re.Length, _binCount, nameof(re));
        Lengths.RequireAtLeast(im.Length, _binCount, nameof(im));
        Lengths.RequireAtLeast(densityA.Length, _binCount, nameof(densityA));
        Lengths.RequireAtLeast(densityB.Length, _binCount, nameof(densityB));
        if (Segments == 0)
        {
            throw new InvalidOperationException("No segment was added, so there is no mean.");
        }

        for (var at = 0; at < _binCount; at++)
        {
            var scale = shape.DensityScale(_firstBin + at);
            re[at] = FourLaneSum.Of(_re.Span, at) * scale / Segments;
            im[at] = FourLaneSum.Of(_im.Span, at) * scale / Segments;
            densityA[at] = FourLaneSum.Of(_powerA.Span, at) * scale / Segments;
            densityB[at] = FourLaneSum.Of(_powerB.Span, at) * scale / Segments;
        }
    }
}
