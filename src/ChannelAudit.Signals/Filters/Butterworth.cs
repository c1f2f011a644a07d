using System.Collections.Immutable;
using ChannelAudit.Signals.Arithmetic;

namespace ChannelAudit.Signals.Filters;

/// <summary>Butterworth filters, by the bilinear transform with the corner frequency kept.</summary>
/// <remarks>The textbook design (Oppenheim and Schafer, Discrete-Time Signal Processing, from memory): −3.01 dB at the
/// corner, 6 dB per octave and order beyond. The same filters as SciPy's <c>butter(order, corner, fs=rate)</c>.</remarks>
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

    /// <summary>Designs a high-pass of any order, as sections to be passed one after the other.</summary>
    /// <param name="order">1 or more; each 2 make a section, an odd one a section of its own.</param>
    /// <param name="cornerHz">Corner frequency in hertz, above 0 and below half the rate.</param>
    /// <param name="rateHz">Sampling rate in hertz.</param>
    /// <exception cref="ArgumentOutOfRangeException">The order or the corner is out of range.</exception>
    public static ImmutableArray<SecondOrderSection> HighPassSections(int order, double cornerHz, double rateHz)
    {
        var tangent = Tangent(cornerHz, rateHz);
        return Sections(order, tangent, a0 => new SecondOrderSection(1 / a0, -1 / a0, 0, 0, 0), a0 => new SecondOrderSection(1 / a0, -2 / a0, 1 / a0, 0, 0));
    }

    /// <summary>Designs a low-pass of any order, as sections to be passed one after the other.</summary>
    /// <param name="order">1 or more; each 2 make a section, an odd one a section of its own.</param>
    /// <param name="cornerHz">Corner frequency in hertz, above 0 and below half the rate.</param>
    /// <param name="rateHz">Sampling rate in hertz.</param>
    /// <exception cref="ArgumentOutOfRangeException">The order or the corner is out of range.</exception>
    public static ImmutableArray<SecondOrderSection> LowPassSections(int order, double cornerHz, double rateHz)
    {
        var tangent = Tangent(cornerHz, rateHz);
        return Sections(order, tangent, a0 => One(tangent / a0), a0 => Two(tangent * tangent / a0));

        static SecondOrderSection One(double gain) => new(gain, gain, 0, 0, 0);
        static SecondOrderSection Two(double gain) => new(gain, 2 * gain, gain, 0, 0);
    }

    /// <summary>The share of power that a high-pass lets through at a frequency: 1/(1 + (tan(pi fc/rate)/tan(pi f/rate))^(2 order)).</summary>
    /// <param name="order">1 or more.</param>
    /// <param name="cornerHz">Corner frequency in hertz; from half the rate on nothing passes.</param>
    /// <param name="rateHz">Sampling rate in hertz.</param>
    /// <param name="hz">The frequency, from 0 to half the rate.</param>
    public static double HighPassPower(int order, double cornerHz, double rateHz, double hz) =>
        cornerHz >= rateHz / 2 ? 0 : hz >= rateHz / 2 ? 1 : hz <= 0 ? 0 : Share(order, Tangent(cornerHz, rateHz) / Tangent(hz, rateHz));

    /// <summary>The share of power that a low-pass lets through at a frequency: 1/(1 + (tan(pi f/rate)/tan(pi fc/rate))^(2 order)).</summary>
    /// <param name="order">1 or more.</param>
    /// <param name="cornerHz">Corner frequency in hertz; from half the rate on everything passes.</param>
    /// <param name="rateHz">Sampling rate in hertz.</param>
    /// <param name="hz">The frequency, from 0 to half the rate.</param>
    public static double LowPassPower(int order, double cornerHz, double rateHz, double hz) =>
        cornerHz >= rateHz / 2 || hz <= 0 ? 1 : hz >= rateHz / 2 ? 0 : Share(order, Tangent(hz, rateHz) / Tangent(cornerHz, rateHz));

    private static double Share(int order, double ratio)
    {
        var power = 1.0;
        for (var i = 0; i < 2 * order; i++)
        {
            power *= ratio;
        }

        return 1 / (1 + power);
    }

    private static ImmutableArray<SecondOrderSection> Sections(
        int order, double tangent, Func<double, SecondOrderSection> first, Func<double, SecondOrderSection> second)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(order, 1);
        var sections = ImmutableArray.CreateBuilder<SecondOrderSection>((order + 1) / 2);
        if (order % 2 == 1)
        {
            var a0 = 1 + tangent;
            sections.Add(first(a0) with { A1 = (tangent - 1) / a0 });
        }

        for (var k = 1; k <= order / 2; k++)
        {
            // Poles of the prototype lie at angles of (2k - 1) pi / (2 order) from the imaginary axis.
            var damping = 2 * RepeatableMath.SinCosOfPart((2 * k) - 1, 4L * order).Sin;
            var square = tangent * tangent;
            var a0 = 1 + (damping * tangent) + square;
            sections.Add(second(a0) with { A1 = 2 * (square - 1) / a0, A2 = (1 - (damping * tangent) + square) / a0 });
        }

        return sections.ToImmutable();
    }

    private static double Tangent(double cornerHz, double rateHz)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(cornerHz, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(cornerHz, rateHz / 2);
        var (sin, cos) = RepeatableMath.SinCosTurns(cornerHz / (2 * rateHz));
        return sin / cos;
    }

    private static (double Tangent, double A0, double A1, double A2) Poles(double cornerHz, double rateHz)
    {
        var tangent = Tangent(cornerHz, rateHz);
        var square = tangent * tangent;
        var a0 = 1 + (Math.Sqrt(2) * tangent) + square;
        return (tangent, a0, 2 * (square - 1) / a0, (1 - (Math.Sqrt(2) * tangent) + square) / a0);
    }
}
