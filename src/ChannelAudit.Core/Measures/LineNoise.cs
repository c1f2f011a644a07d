using ChannelAudit.Signals.Spectra;

namespace ChannelAudit.Measures;

/// <summary>Mains and its harmonics: the power of five bins around each, above the floor beside them.</summary>
/// <remarks>
/// P_h = max(0, sum of S over the window x df - F_h x 5 x df), summed over the harmonics inside the band;
/// standard error from the muscle alone: sqrt(sum of F_h^2 x 1.5 x 5 / L) x df.
/// </remarks>
public static class LineNoise
{
    /// <summary>Line power in a mean density.</summary>
    /// <param name="density">One-sided density, unit²/Hz, of <see cref="SpectralFrame.Bins"/> bins.</param>
    /// <param name="frame">The channel's frame.</param>
    /// <param name="segments">Overlapping segments in the mean, 1 or more.</param>
    public static PeakReading Of(ReadOnlySpan<double> density, SpectralFrame frame, int segments)
    {
        double bias = PeakFloor.MedianBias(segments);
        double power = 0;
        double floorSquares = 0;
        foreach (LineWindow window in frame.Harmonics)
        {
            double floor = PeakFloor.At(density, window.Center, bias);
            power += Math.Max(0, SumAround(density, window.Center) - (floor * LineWindow.Width)) * frame.BinHz;
            floorSquares += floor * floor;
        }

        double variance = floorSquares * PeakFloor.HannCorrelation * LineWindow.Width / Welch.EffectiveSegments(segments);
        return new PeakReading(power, Math.Sqrt(variance) * frame.BinHz, frame.LineHz);
    }

    /// <summary>The sum of a window's bins.</summary>
    internal static double SumAround(ReadOnlySpan<double> density, int center)
    {
        double sum = 0;
        for (int bin = Math.Max(0, center - LineWindow.Reach); bin <= Math.Min(density.Length - 1, center + LineWindow.Reach); bin++)
        {
            sum += density[bin];
        }

        return sum;
    }
}
