using System.Numerics;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Signals.Spectra;

/// <summary>One periodogram of a long power-of-two stretch, to find the frequency of a narrow line.</summary>
public static class LongPeriodogram
{
    private const int NeighboursFrom = 3;
    private const int NeighboursTo = 10;

    /// <summary>Gives the longest power of two not above a number of samples.</summary>
    /// <param name="samples">Number of samples, at least 1.</param>
    /// <returns>The length of the stretch to hand to <see cref="Density"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no sample.</exception>
    public static int StretchLength(int samples)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 1);
        return 1 << BitOperations.Log2((uint)samples);
    }

    /// <summary>Gives the one-sided density of a stretch: mean removed, periodic Hann window.</summary>
    /// <param name="samples">A power of two of samples, at least 2; left as they are.</param>
    /// <param name="rateHz">Sampling rate in hertz, positive.</param>
    /// <returns>length/2 + 1 values in squared unit per hertz, rate/length apart.</returns>
    /// <exception cref="ArgumentException">The length is not a power of two.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not positive.</exception>
    public static double[] Density(ReadOnlySpan<double> samples, double rateHz)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(rateHz, 0);
        if (samples.Length < 2 || !BitOperations.IsPow2(samples.Length))
        {
            throw new ArgumentException("The stretch must be a power of two of samples long.", nameof(samples));
        }

        var window = HannWindow.Periodic(samples.Length);
        var rms = Moments.Rms(window);
        var mean = Moments.Mean(samples);
        for (var n = 0; n < window.Length; n++)
        {
            window[n] *= samples[n] - mean;
        }

        var spectrum = FftSharp.FFT.ForwardReal(window);
        var scale = 1 / (rateHz * rms * rms * samples.Length);
        var density = new double[spectrum.Length];
        for (var bin = 0; bin < density.Length; bin++)
        {
            var (re, im) = (spectrum[bin].Real, spectrum[bin].Imaginary);
            var sides = bin == 0 || bin == density.Length - 1 ? 1 : 2;
            density[bin] = ((re * re) + (im * im)) * scale * sides;
        }

        return density;
    }

    /// <summary>Gives the frequency of the strongest bin in a range, refined between bins.</summary>
    /// <param name="density">Density from 0 Hz on.</param>
    /// <param name="binHz">Distance of the bins in hertz, positive.</param>
    /// <param name="fromHz">Lowest frequency of the range.</param>
    /// <param name="toHz">Highest frequency of the range.</param>
    /// <returns>Frequency in hertz: the top of a parabola through the logarithms of the strongest bin and its two
    /// neighbours, at most half a bin away; the bin itself at the ends of the density or beside an empty bin.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The range holds no bin.</exception>
    /// <remarks>On the logarithm the Hann window's main lobe is nearly a parabola: the error stays below 0.02 bins.</remarks>
    public static double PeakHz(ReadOnlySpan<double> density, double binHz, double fromHz, double toHz)
    {
        var peak = StrongestBin(density, binHz, fromHz, toHz);
        if (peak == 0 || peak == density.Length - 1 || !(density[peak - 1] > 0) || !(density[peak + 1] > 0))
        {
            return peak * binHz;
        }

        var left = Math.Log(density[peak - 1] / density[peak]);
        var right = Math.Log(density[peak + 1] / density[peak]);
        var bend = left + right;
        var shift = bend < 0 ? Math.Clamp((left - right) / (2 * bend), -0.5, 0.5) : 0;
        return (peak + shift) * binHz;
    }

    /// <summary>Gives how far the strongest bin in a range stands above its neighbourhood.</summary>
    /// <param name="density">Density from 0 Hz on.</param>
    /// <param name="binHz">Distance of the bins in hertz, positive.</param>
    /// <param name="fromHz">Lowest frequency of the range.</param>
    /// <param name="toHz">Highest frequency of the range.</param>
    /// <returns>The strongest bin over the median of the bins 3 to 10 away on both sides; infinite over an empty
    /// neighbourhood, 0 when the peak is 0 too or there is no neighbour.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The range holds no bin.</exception>
    public static double PeakProminence(ReadOnlySpan<double> density, double binHz, double fromHz, double toHz)
    {
        var peak = StrongestBin(density, binHz, fromHz, toHz);
        Span<double> neighbours = stackalloc double[2 * (NeighboursTo - NeighboursFrom + 1)];
        var count = 0;
        for (var distance = NeighboursFrom; distance <= NeighboursTo; distance++)
        {
            if (peak - distance >= 0)
            {
                neighbours[count++] = density[peak - distance];
            }

            if (peak + distance < density.Length)
            {
                neighbours[count++] = density[peak + distance];
            }
        }

        return count == 0 || density[peak] == 0 ? 0 : density[peak] / Quantiles.MedianInPlace(neighbours[..count]);
    }

    private static int StrongestBin(ReadOnlySpan<double> density, double binHz, double fromHz, double toHz)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(binHz, 0);
        var first = Math.Max(0, (int)Math.Ceiling(fromHz / binHz));
        var last = Math.Min(density.Length - 1, (int)Math.Floor(toHz / binHz));
        ArgumentOutOfRangeException.ThrowIfLessThan(last, first, nameof(toHz));
        var peak = first;
        for (var bin = first + 1; bin <= last; bin++)
        {
            if (density[bin] > density[peak])
            {
                peak = bin;
            }
        }

        return peak;
    }
}
