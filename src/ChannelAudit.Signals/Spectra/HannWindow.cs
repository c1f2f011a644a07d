using ChannelAudit.Signals.Arithmetic;

namespace ChannelAudit.Signals.Spectra;

/// <summary>The Hann window.</summary>
public static class HannWindow
{
    /// <summary>Gives the periodic form w[n] = (1 − cos(2πn/N))/2, as spectral estimates want it.</summary>
    /// <param name="length">Number of points N, at least 1; one point is 1, as in SciPy.</param>
    /// <returns>N weights between 0 and 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The length is below 1.</exception>
    /// <remarks>Harris 1978, equation 27 (number from memory). The symmetric form has N−1 in place of N.</remarks>
    public static double[] Periodic(int length)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(length, 1);
        if (length == 1)
        {
            return [1];
        }

        var window = new double[length];
        for (var n = 0; n < length; n++)
        {
            window[n] = 0.5 - (0.5 * RepeatableMath.SinCosOfPart(n, length).Cos);
        }

        return window;
    }
}
