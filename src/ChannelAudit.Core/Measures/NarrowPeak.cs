using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Measures;

/// <summary>The strongest steady narrow peak that is no harmonic of the mains: a display, a strobe, a stimulator.</summary>
/// <remarks>
/// Window and floor as for line noise. A peak is narrow when its five bins hold at least 80 % of the excess over the floor within ten
/// bins: motor units firing together near 31 and 62 Hz are broader (van Boxtel 2001).
/// </remarks>
public static class NarrowPeak
{
    /// <summary>The least share of the excess within ten bins that five bins must hold.</summary>
    public const double NarrowShare = 0.8;

    // A line window whose nearest bin is one that the peak's own window touches, to its far end.
    private const int BesideLine = LineWindow.Reach + LineWindow.Width - 1;

    // Keeps a ratio finite where the peak is all there is: 90 dB is as bad as any number.
    private const double LeastMuscleShare = 1e-9;

    /// <summary>The strongest narrow peak in a mean density; power 0 when there is none.</summary>
    /// <param name="density">One-sided density of <see cref="SpectralFrame.Bins"/> bins.</param>
    /// <param name="frame">The channel's frame.</param>
    /// <param name="segments">Overlapping segments in the mean.</param>
    /// <param name="leastPower">Peaks whose five bins hold less than this are not looked at (single segments: below it nothing is significant).</param>
    /// <param name="passes">For every bin the share of power that a filter lets through: the strongest is then sought in what is left; empty: no filter.</param>
    public static PeakReading Of(
        ReadOnlySpan<double> density, SpectralFrame frame, int segments, double leastPower = 0, ReadOnlySpan<double> passes = default)
    {
        double bias = PeakFloor.MedianBias(segments);
        PeakReading best = default;
        foreach (BinRange range in frame.NarrowCenters)
        {
            for (int bin = range.From; bin <= range.To; bin++)
            {
                // What the five bins hold is more than what they hold above the floor: cheap to see that a peak cannot win.
                if (density[bin] > density[bin - 1] && density[bin] >= density[bin + 1]
                    && LineNoise.SumAround(density, bin) * frame.BinHz is var sum && sum >= leastPower && sum > best.Power)
                {
                    best = Better(best, density, frame, segments, bin, bias, passes);
                }
            }
        }

        return best;
    }

    /// <summary>
    /// The muscle power that a peak is held against: the band power without the peak itself, or its ratio could never reach 0 dB.
    /// </summary>
    /// <param name="peak">The peak.</param>
    /// <param name="bandPower">Band power as <see cref="BandAmplitude"/> gives it, which counts the peak as muscle.</param>
    /// <param name="frame">The channel's frame.</param>
    public static double MuscleBeside(PeakReading peak, double bandPower, SpectralFrame frame)
    {
        double scale = (double)(frame.LastBin - frame.FirstBin + 1) / Math.Max(1, frame.OpenBins);
        return Math.Max(bandPower - (peak.Power * scale), bandPower * LeastMuscleShare);
    }

    /// <summary>The excess at one frequency, whether or not there is a peak; behind a filter where the shares that pass are given.</summary>
    public static PeakReading AtHz(
        ReadOnlySpan<double> density, SpectralFrame frame, int segments, double hz, ReadOnlySpan<double> passes = default)
    {
        int bin = (int)Math.Round(hz / frame.BinHz, MidpointRounding.AwayFromZero);
        bin = Math.Clamp(bin, 0, frame.Bins - 1);
        return At(density, frame, segments, bin, PeakFloor.At(density, bin, PeakFloor.MedianBias(segments)), passes);
    }

    private static PeakReading At(
        ReadOnlySpan<double> density, SpectralFrame frame, int segments, int bin, double floor, ReadOnlySpan<double> passes)
    {
        (double excess, double squares) = LineNoise.Excess(density, bin, floor, passes);
        double power = Math.Max(0, excess) * frame.BinHz;
        double variance = floor * floor * PeakFloor.HannCorrelation * squares / Welch.EffectiveSegments(segments);
        return new PeakReading(power, Math.Sqrt(variance) * frame.BinHz, PeakHz(density, frame, bin));
    }

    private static PeakReading Better(
        PeakReading best, ReadOnlySpan<double> density, SpectralFrame frame, int segments, int bin, double bias, ReadOnlySpan<double> passes)
    {
        double floor = PeakFloor.At(density, bin, bias);
        PeakReading peak = At(density, frame, segments, bin, floor, passes);
        return peak.Power > best.Power && IsNarrow(density, frame, bin, floor) && IsAboveLine(density, frame, bin) ? peak : best;
    }

    // Beside a mains harmonic only what is higher than all of it: the flank and the wander of mains are no tone.
    private static bool IsAboveLine(ReadOnlySpan<double> density, SpectralFrame frame, int bin)
    {
        for (int at = Math.Max(0, bin - BesideLine); at <= Math.Min(density.Length - 1, bin + BesideLine); at++)
        {
            if (frame.IsLine[at] && density[at] >= density[bin])
            {
                return false;
            }
        }

        return true;
    }

    // Asked of the raw spectrum: a filter changes no peak's shape.
    private static bool IsNarrow(ReadOnlySpan<double> density, SpectralFrame frame, int bin, double floor)
    {
        double power = Math.Max(0, LineNoise.Excess(density, bin, floor, []).Excess) * frame.BinHz;
        double wide = 0;
        for (int at = Math.Max(1, bin - PeakFloor.Far); at <= Math.Min(density.Length - 1, bin + PeakFloor.Far); at++)
        {
            // A neighbouring mains harmonic is no part of this peak.
            wide += frame.IsLine[at] ? 0 : density[at] - floor;
        }

        return power >= NarrowShare * wide * frame.BinHz;
    }

    /// <summary>Centre of the three highest bins, weighted by their density: finer than a bin.</summary>
    private static double PeakHz(ReadOnlySpan<double> density, SpectralFrame frame, int bin)
    {
        double weight = 0;
        double moment = 0;
        for (int at = Math.Max(0, bin - 1); at <= Math.Min(density.Length - 1, bin + 1); at++)
        {
            weight += density[at];
            moment += density[at] * at;
        }

        return weight > 0 ? moment / weight * frame.BinHz : bin * frame.BinHz;
    }
}
