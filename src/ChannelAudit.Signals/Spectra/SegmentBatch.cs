namespace ChannelAudit.Signals.Spectra;

/// <summary>The windowed spectra of up to four segments of every channel: one load, then any sum over them.</summary>
/// <remarks>
/// Each segment has its mean removed, is weighted with the periodic Hann window and transformed. Spectra stay unscaled;
/// densities are one-sided, in the squared unit of the input per hertz: |X|²·2/(rate·Σw²), without the factor 2 at 0 Hz
/// and, for an even length, at half the rate (as SciPy's <c>scaling='density'</c>). Serves one thread at a time.
/// </remarks>
public sealed class SegmentBatch
{
    /// <summary>Number of segments one batch can hold for each channel.</summary>
    public const int Lanes = 4;

    private readonly double[] _window;
    private readonly RealFft _fft;
    private readonly AlignedBuffer _lanes;
    private readonly AlignedBuffer[] _re;
    private readonly AlignedBuffer[] _im;
    private readonly double _scale;

    /// <summary>Takes memory for the spectra.</summary>
    /// <param name="rateHz">Sampling rate in hertz, positive.</param>
    /// <param name="segmentLength">Samples in a segment, at least 2.</param>
    /// <param name="channels">Number of channels, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public SegmentBatch(double rateHz, int segmentLength, int channels)
    {
        if (!(rateHz > 0) || !double.IsFinite(rateHz))
        {
            throw new ArgumentOutOfRangeException(nameof(rateHz), rateHz, "The rate must be positive and finite.");
        }

        ArgumentOutOfRangeException.ThrowIfLessThan(segmentLength, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(channels, 1);
        RateHz = rateHz;
        SegmentLength = segmentLength;
        Channels = channels;
        _fft = RealFft.For(segmentLength);
        _window = HannWindow.Periodic(segmentLength);
        _scale = 1 / (rateHz * WindowPower(_window));
        _lanes = new AlignedBuffer(Lanes * segmentLength);
        _re = new AlignedBuffer[channels];
        _im = new AlignedBuffer[channels];
        for (var channel = 0; channel < channels; channel++)
        {
            _re[channel] = new AlignedBuffer(Lanes * Bins);
            _im[channel] = new AlignedBuffer(Lanes * Bins);
        }
    }

    /// <summary>Gets the sampling rate in hertz.</summary>
    public double RateHz { get; }

    /// <summary>Gets the samples in a segment.</summary>
    public int SegmentLength { get; }

    /// <summary>Gets the number of channels.</summary>
    public int Channels { get; }

    /// <summary>Gets the number of frequency bins, from 0 Hz to at most half the rate.</summary>
    public int Bins => _fft.Bins;

    /// <summary>Gets the distance between bins in hertz.</summary>
    public double BinHz => RateHz / SegmentLength;

    /// <summary>Gets the number of segments the last load filled, 0 before the first.</summary>
    public int Segments { get; private set; }

    /// <summary>Transforms up to four segments of one channel; load every channel before reading pairs.</summary>
    /// <param name="channel">Channel from 0.</param>
    /// <param name="samples">Signal from the first sample of the first segment on, at least (segments−1)·hop +
    /// segment length long; left as it is.</param>
    /// <param name="hop">Samples from one segment's start to the next, at least 1.</param>
    /// <param name="segments">Number of segments, 1 to 4; the other lanes become 0.</param>
    /// <exception cref="ArgumentException">There are too few samples.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Another value is out of range.</exception>
    public void Load(int channel, ReadOnlySpan<double> samples, int hop, int segments)
    {
        RequireChannel(channel);
        ArgumentOutOfRangeException.ThrowIfLessThan(hop, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(segments, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(segments, Lanes);
        Lengths.RequireAtLeast(samples.Length, checked(((segments - 1) * hop) + SegmentLength), nameof(samples));
        LaneLoader.Load(samples, hop, segments, _window, _lanes.Span);
        _fft.TransformFour(_lanes.Span, _re[channel].Span, _im[channel].Span);
        Segments = segments;
    }

    /// <summary>Gives the real parts of a channel's unscaled spectra.</summary>
    /// <param name="channel">Channel from 0.</param>
    /// <returns>Bin·4+lane, valid until the channel's next load.</returns>
    public ReadOnlySpan<double> Re(int channel) => _re[RequireChannel(channel)].Span;

    /// <summary>Gives the imaginary parts of a channel's unscaled spectra.</summary>
    /// <param name="channel">Channel from 0.</param>
    /// <returns>Bin·4+lane, valid until the channel's next load.</returns>
    public ReadOnlySpan<double> Im(int channel) => _im[RequireChannel(channel)].Span;

    /// <summary>Gives the factor from |X|² to the one-sided density in one bin.</summary>
    /// <param name="bin">Bin from 0.</param>
    /// <returns>Factor in 1/Hz.</returns>
    public double DensityScale(int bin) => bin == 0 || 2 * bin == SegmentLength ? _scale : 2 * _scale;

    /// <summary>Gives the density of one segment.</summary>
    /// <param name="channel">Channel from 0.</param>
    /// <param name="lane">Segment of the batch, from 0 and below <see cref="Segments"/>.</param>
    /// <param name="density">Takes <see cref="Bins"/> values in squared unit per hertz.</param>
    /// <exception cref="ArgumentException">The span is too short.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such channel or segment.</exception>
    public void Density(int channel, int lane, Span<double> density)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(lane);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(lane, Segments);
        Lengths.RequireAtLeast(density.Length, Bins, nameof(density));
        var re = Re(channel);
        var im = Im(channel);
        for (var bin = 0; bin < Bins; bin++)
        {
            var (a, b) = (re[(Lanes * bin) + lane], im[(Lanes * bin) + lane]);
            density[bin] = ((a * a) + (b * b)) * DensityScale(bin);
        }
    }

    /// <summary>Gives the densities of all four lanes.</summary>
    /// <param name="channel">Channel from 0.</param>
    /// <param name="density">Takes 4·<see cref="Bins"/> values at bin·4+lane, in squared unit per hertz; 0 in lanes
    /// without a segment.</param>
    /// <exception cref="ArgumentException">The span is too short.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such channel.</exception>
    public void Densities(int channel, Span<double> density)
    {
        Lengths.RequireAtLeast(density.Length, Lanes * Bins, nameof(density));
        LanePower.Write(Re(channel), Im(channel), density);
        LanePower.Scale(density[..Lanes], DensityScale(0));
        LanePower.Scale(density[Lanes..(Lanes * (Bins - 1))], 2 * _scale);
        LanePower.Scale(density.Slice(Lanes * (Bins - 1), Lanes), DensityScale(Bins - 1));
    }

    private static double WindowPower(double[] window)
    {
        var sum = 0.0;
        foreach (var weight in window)
        {
            sum += weight * weight;
        }

        return sum;
    }

    private int RequireChannel(int channel)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(channel);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(channel, Channels);
        return channel;
    }
}
