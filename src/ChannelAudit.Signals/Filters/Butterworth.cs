using ChannelAudit.Signals.Arithmetic;

namespace ChannelAudit.Signals.Filters;

/// <summary>Butterworth filters of order 2, by the bilinear transform with the corner frequency kept.</summary>
/// <remarks>The textbook design (Oppenheim and Schafer, Discrete-Time Signal Processing, from memory): −3.01 dB at the
/// corner, 12 dB per octave beyond. The same coefficients as SciPy's <c>butter(2, corner, fs=rate)</c>.</remarks>
public static class Butterworth
{
    /// <summary>Designs a high-pass.</summary>
    /// <param name="cornerHz">Corner frequency in hertz, above 0 and below half the rate.</param>
    /// <param name="rateHz">Sampling rate in hertz.</param>
    /// <returns>The filter.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The corner is out of range.</exception>
    public static SecondOrderSection HighPass(double cornerHz, double rateHz)
    {
        var (_, a0, a1, a2) = Poles(cornerHz, rateHz);
        return new SecondOrderSection(1 / a0, -2 / a0, 1 / a0, a1, a2);
    }

    /// <summary>Designs a low-pass.</summary>
    /// <param name="cornerHz">Corner frequency in hertz, above 0 and below half the rate.</param>
    /// <param name="rateHz">Sampling rate in hertz.</param>
    /// <returns>The filter.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The corner is out of range.</exception>
    public static SecondOrderSection LowPass(double cornerHz, double rateHz)
    {
        var (tangent, a0, a1, a2) = Poles(cornerHz, rateHz);
        var gain = tangent * tangent / a0;
        return new SecondOrderSection(gain, 2 * gain, gain, a1, a2);
    }

    private static (double Tangent, double A0, double A1, double A2) Poles(double cornerHz, double rateHz)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(cornerHz, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(cornerHz, rateHz / 2);
        var (sin, cos) = RepeatableMath.SinCosTurns(cornerHz / (2 * rateHz));
        var tangent = sin / cos;
        var square = tangent * tangent;
        var a0 = 1 + (Math.Sqrt(2) * tangent) + square;
        return (tangent, a0, 2 * (square - 1) / a0, (1 - (Math.Sqrt(2) * tangent) + square) / a0);
    }
}
