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
    /// <param name="passes">For every bin the share of power that a filter lets through; empty: no filter.</param>
    public static PeakReading Of(ReadOnlySpan<double> density, SpectralFrame frame, int segments, ReadOnlySpan<double> passes = default)
    {
        double bias = PeakFloor.MedianBias(segments);
        double power = 0;
        double floorSquares = 0;
        foreach (LineWindow window in frame.Harmonics)
        {
            double floor = PeakFloor.At(density, window.Center, bias);
            (double excess, double squares) = Excess(density, window.Center, floor, passes);
            power += Math.Max(0, excess) * frame.BinHz;
            floorSquares += floor * floor * squares;
        }

        double variance = floorSquares * PeakFloor.HannCorrelation / Welch.EffectiveSegments(segments);
        return new PeakReading(power, Math.Sqrt(variance) * frame.BinHz, frame.LineHz);
    }

    /// <summary>What a window holds above its floor, and the squared shares of power that pass in it (5 without a filter).</summary>
    internal static (double Excess, double Squares) Excess(ReadOnlySpan<double> density, int center, double floor, ReadOnlySpan<double> passes)
    {
        if (passes.IsEmpty)
        {
            return (SumAround(density, center) - (floor * LineWindow.Width), LineWindow.Width);
        }

        double excess = 0;
        double squares = 0;
        for (int bin = Math.Max(0, center - LineWindow.Reach); bin <= Math.Min(density.Length - 1, center + LineWindow.Reach); bin++)
        {
            excess += (density[bin] - floor) * passes[bin];
            squares += passes[bin] * passes[bin];
        }

        return (excess, squares);
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
