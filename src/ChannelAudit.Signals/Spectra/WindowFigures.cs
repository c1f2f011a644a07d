using ChannelAudit.Signals.Arithmetic;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Signals.Spectra;

/// <summary>Figures of merit of windows, after Harris 1978 (Proc IEEE 66:51–83, from memory).</summary>
public static class WindowFigures
{
    /// <summary>Gives Σw/N: the factor by which the window lowers a sine's peak.</summary>
    /// <param name="window">N weights, at least one.</param>
    /// <returns>The coherent gain, 1 for the rectangular window.</returns>
    /// <exception cref="ArgumentException">The window is empty.</exception>
    public static double CoherentGain(ReadOnlySpan<double> window) => Moments.Mean(window);

    /// <summary>Gives N·Σw²/(Σw)²: the bins of white noise that pass through one bin.</summary>
    /// <param name="window">N weights, at least one, with a sum other than 0.</param>
    /// <returns>Equivalent noise bandwidth in bins, 1 for the rectangular window.</returns>
    /// <exception cref="ArgumentException">The window is empty.</exception>
    public static double NoiseBandwidthBins(ReadOnlySpan<double> window)
    {
        var mean = Moments.Mean(window);
        var rms = Moments.Rms(window);
        return rms * rms / (mean * mean);
    }

    /// <summary>Gives −20·log10(|Σw·exp(−iπn/N)|/Σw): how much lower a sine half-way between two bins appears.</summary>
    /// <param name="window">N weights, at least one, with a sum other than 0.</param>
    /// <returns>Scallop loss in dB, above 0.</returns>
    /// <exception cref="ArgumentException">The window is empty.</exception>
    public static double ScallopLossDb(ReadOnlySpan<double> window)
    {
        Lengths.RequireAtLeast(window.Length, 1, nameof(window));
        double re = 0, im = 0;
        for (var n = 0; n < window.Length; n++)
        {
            var (sin, cos) = RepeatableMath.SinCosOfPart(n, 2L * window.Length);
            re += window[n] * cos;
            im += window[n] * sin;
        }

        return -20 * Math.Log10(Math.Sqrt((re * re) + (im * im)) / Moments.Sum(window));
    }
}
