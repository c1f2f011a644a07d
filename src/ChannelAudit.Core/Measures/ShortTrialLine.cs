using ChannelAudit.Signals.Lines;
using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Measures;

/// <summary>Line and muscle power of a trial below one second, by least-squares sines at the harmonics of the mains.</summary>
/// <remarks>
/// P_h = (a² + b²)/2 less its noise bias S(h f0)/T, S from the periodic-Hann periodogram of what the fit leaves; muscle power is the band
/// power of that periodogram. One sine at the nominal frequency would lose power over long stretches (sinc² of the offset times T), which
/// is why a second and more uses the Welch bins.
/// </remarks>
public static class ShortTrialLine
{
    /// <summary>Below this many seconds nothing spectral is said.</summary>
    public const double LeastSeconds = 0.2;

    /// <summary>Line reading and muscle power, and what the scoring filter leaves of both.</summary>
    /// <param name="samples">An unbroken window of 0.2 s or more.</param>
    /// <param name="frame">The channel's frame.</param>
    public static (PeakReading Line, double EmgPower, Surviving Left) Of(ReadOnlySpan<double> samples, SpectralFrame frame)
    {
        double[] frequencies = [.. frame.Harmonics.Select(window => window.Harmonic * frame.LineHz)];
        HarmonicFitResult fit = HarmonicFit.Fit(samples, frame.RateHz, frequencies);
        int length = samples.Length - (samples.Length % 2);
        double binHz = frame.RateHz / length;
        double[] density = Welch.Density(fit.Residual.AsSpan()[..length], frame.RateHz, length);
        double bias = PeakFloor.MedianBias(1);
        double power = 0;
        double variance = 0;
        double left = 0;
        double leftVariance = 0;
        for (int i = 0; i < frequencies.Length; i++)
        {
            int bin = Math.Min(density.Length - 1, (int)Math.Round(frequencies[i] / binHz, MidpointRounding.AwayFromZero));
            double noise = PeakFloor.At(density, bin, bias) * frame.RateHz / samples.Length;
            power += Math.Max(0, fit.Harmonics[i].Power - noise);
            variance += noise * noise;
            double passes = frame.Filter.IsNotched(frequencies[i]) ? 0 : frame.Filter.PowerAt(frequencies[i], frame.RateHz);
            left += passes * Math.Max(0, fit.Harmonics[i].Power - noise);
            leftVariance += passes * passes * noise * noise;
        }

        double emg = 0;
        double emgLeft = 0;
        for (int bin = frame.Band.FirstBin(binHz); bin <= Math.Min(density.Length - 1, frame.Band.LastBin(binHz)); bin++)
        {
            emg += density[bin] * binHz;
            emgLeft += density[bin] * binHz * frame.Filter.PowerAt(bin * binHz, frame.RateHz);
        }

        PeakReading lineLeft = new(left, Math.Sqrt(leftVariance), frame.LineHz);
        return (new PeakReading(power, Math.Sqrt(variance), frame.LineHz), emg, Surviving.OfShort(lineLeft, emgLeft));
    }
}
