using System.Collections.Immutable;

namespace ChannelAudit.Measures;

/// <summary>What the scoring filter leaves of a window: the same questions as of the raw spectrum, each bin with the share of power that passes.</summary>
/// <param name="Line">Mains and its harmonics.</param>
/// <param name="Narrow">The strongest narrow peak that is left; null in windows below one second.</param>
/// <param name="EmgPower">Muscle power in the band, unit²; null when line windows leave nothing of the band.</param>
/// <param name="LowPower">Power from 2 to 15 Hz, unit²; null in windows below one second.</param>
/// <param name="Total">All power from the first bin on, unit².</param>
/// <param name="NoisePower">What white noise holds of it, unit²; null where noise and muscle cannot be told apart.</param>
/// <param name="NotchShare">The share of the power behind high-pass and low-pass that the notches leave.</param>
public sealed record Surviving(
    PeakReading Line, PeakReading? Narrow, double? EmgPower, double? LowPower, double Total, double? NoisePower, double NotchShare)
{
    // A muscle's density at the top of the band against that from 80 to 150 Hz, at most (contraction 0.07).
    private const double MuscleAtTop = 0.1;

    /// <summary>What is left of a mean density.</summary>
    /// <param name="density">One-sided density, unit²/Hz, of <see cref="SpectralFrame.Bins"/> bins.</param>
    /// <param name="frame">The channel's frame with its filter.</param>
    /// <param name="segments">Overlapping segments in the mean.</param>
    public static Surviving Of(ReadOnlySpan<double> density, SpectralFrame frame, int segments)
    {
        double total = Sum(density, frame.Passes, 1, frame.Bins - 1) * frame.BinHz;
        double unnotched = frame.Filter.Setup.NotchesHz.IsEmpty
            ? total
            : Sum(density, frame.Filter.PowerAtBins(frame.Bins, frame.BinHz, frame.RateHz, false), 1, frame.Bins - 1) * frame.BinHz;
        return new Surviving(
            LineNoise.Of(density, frame, segments, frame.Passes),
            NarrowPeak.Of(density, frame, segments, passes: frame.Passes),
            BandAmplitude.Power(density, frame, frame.Passes),
            Sum(density, frame.Passes, frame.LowBins.From, frame.LowBins.To) * frame.BinHz,
            total,
            Noise(density, frame, total),
            unnotched > 0 ? total / unnotched : 1);
    }

    /// <summary>What is left of a window below one second, where only line and muscle are known.</summary>
    public static Surviving OfShort(PeakReading line, double emgPower) => new(line, null, emgPower, null, emgPower + line.Power, null, 1);

    /// <summary>What is left of white noise of a density in the band; above the band all there is counts as noise.</summary>
    /// <param name="noise">The noise's density, unit²/Hz.</param>
    /// <param name="density">The window's mean density.</param>
    /// <param name="frame">The channel's frame with its filter.</param>
    /// <param name="total">All power that is left, which the noise cannot exceed.</param>
    public static double WhitePower(double noise, ReadOnlySpan<double> density, SpectralFrame frame, double total)
    {
        double inBand = 0;
        for (int bin = 1; bin <= frame.LastBin; bin++)
        {
            inBand += noise * frame.Passes[bin];
        }

        double above = noise > 0 ? Sum(density, frame.Passes, frame.LastBin + 1, frame.Bins - 1) : 0;
        return Math.Min(total, (inBand + above) * frame.BinHz);
    }

    /// <summary>White noise: what the top of the band has above a tenth of the density from 80 to 150 Hz; above the band all there is.</summary>
    private static double? Noise(ReadOnlySpan<double> density, SpectralFrame frame, double total)
    {
        double top = Whiteness.Mean(density, frame.TopRanges);
        double middle = Whiteness.Mean(density, frame.MiddleRanges);
        if (Whiteness.Of(top, middle, frame.Band) is null)
        {
            return null;
        }

        return WhitePower(Math.Max(0, top - (MuscleAtTop * middle)) / (1 - MuscleAtTop), density, frame, total);
    }

    private static double Sum(ReadOnlySpan<double> density, double[] passes, int from, int to)
    {
        double sum = 0;
        for (int bin = from; bin <= to; bin++)
        {
            sum += density[bin] * passes[bin];
        }

        return sum;
    }
}
