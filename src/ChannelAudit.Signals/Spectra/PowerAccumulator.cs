using System.Numerics;

namespace ChannelAudit.Signals.Spectra;

/// <summary>Sums the power of segments, bin by bin, to a mean density (Welch 1967).</summary>
/// <param name="bins">Number of bins, as <see cref="SegmentBatch.Bins"/>, at least 1.</param>
/// <exception cref="ArgumentOutOfRangeException">The number of bins is below 1.</exception>
/// <remarks>Each lane has a sum of its own; they are joined in a fixed order at the end.</remarks>
public sealed class PowerAccumulator(int bins)
{
    private readonly int _bins = bins >= 1 ? bins : throw new ArgumentOutOfRangeException(nameof(bins), bins, "At least one bin.");
    private readonly AlignedBuffer _sums = new(SegmentBatch.Lanes * Math.Max(bins, 1));

    /// <summary>Gets the number of segments added.</summary>
    public int Segments { get; private set; }

    /// <summary>Adds segments of one channel.</summary>
    /// <param name="batch">Loaded batch with the same number of bins.</param>
    /// <param name="channel">Channel from 0.</param>
    /// <param name="laneMask">Bit l stands for segment l; segments that were not loaded never count.</param>
    /// <exception cref="ArgumentException">The batch has another number of bins.</exception>
    public void Add(SegmentBatch batch, int channel, int laneMask = 15)
    {
        Lengths.RequireExactly(batch.Bins, _bins, nameof(batch));
        LanePower.Add(batch.Re(channel), batch.Im(channel), LanePower.Mask(laneMask, batch.Segments), _sums.Span);
        Segments += BitOperations.PopCount((uint)LanePower.Counted(laneMask, batch.Segments));
    }

    /// <summary>Gives the mean one-sided density.</summary>
    /// <param name="shape">A batch of the rate and segment length of those added.</param>
    /// <param name="density">Takes one value for each bin, in squared unit per hertz.</param>
    /// <exception cref="ArgumentException">The shape does not fit or the span is too short.</exception>
    /// <exception cref="InvalidOperationException">No segment was added.</exception>
    public void Density(SegmentBatch shape, Span<double> density)
    {
        Lengths.RequireExactly(shape.Bins, _bins, nameof(shape));
        Lengths.RequireAtLeast(density.Length, _bins, nameof(density));
        if (Segments == 0)
        {
            throw new InvalidOperationException("No segment was added, so there is no mean.");
        }

        var sums = _sums.Span;
        for (var bin = 0; bin < _bins; bin++)
        {
            density[bin] = FourLaneSum.Of(sums, bin) * shape.DensityScale(bin) / Segments;
        }
    }

    /// <summary>Forgets all segments.</summary>
    public void Reset()
    {
        _sums.Span.Clear();
        Segments = 0;
    }
}
