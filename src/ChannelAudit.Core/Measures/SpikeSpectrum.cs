using ChannelAudit.Signals.Arithmetic;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Measures;

/// <summary>Where the energy of a single spike lies: a muscle's potential is smooth and leaves no slow tail, a contact that lets go is steep or recovers slowly.</summary>
/// <param name="MuscleShare">The share of its energy from 20 Hz to the top of the band that lies between 50 and 300 Hz.</param>
/// <param name="Steepness">The share of its slope's energy that lies above 300 Hz.</param>
/// <param name="Return">The highest value of the other sign within 6 ms, as a share of its height.</param>
/// <remarks>
/// Tissue and the distance of a centimetre leave little of a unit's potential above 300 Hz, and a potential that travels past a pair of electrodes has two or
/// three phases, one of the other sign beside the top and little below 50 Hz. A step has a third of its slope's energy above 300 Hz, a spike of 2 ms half of it and more. Engineering judgement.
/// </remarks>
public readonly record struct SpikeSpectrum(double MuscleShare, double Steepness, double Return)
{
    private const double LeastTopHz = 400;
    private const double ReachSeconds = 0.0125;
    private const double ReturnSeconds = 0.006;
    private const double LeastReturn = 0.25;
    private const double StepHz = 10;
    private const double FromHz = 50;
    private const double ToHz = 300;

    /// <summary>Whether the other sign comes with it: no unit's potential goes one way only.</summary>
    public bool HasPhases => Return >= LeastReturn;

    /// <summary>Whether the spike alone could be the muscle's.</summary>
    public bool IsMuscleLike => MuscleShare >= 0.85 && Steepness <= 1 / 3.0 && HasPhases;

    /// <summary>Whether it could be, if more of its kind say so: the sharpest of units.</summary>
    public bool MayBeUnit => MuscleShare >= 0.8 && Steepness <= 0.4 && HasPhases;

    /// <summary>Looks at the 12.5 ms on either side of a spike, at every 10 Hz under a Hann window; null where the band ends below 400 Hz or the stretch too near.</summary>
    /// <param name="highPassed">The stretch.</param>
    /// <param name="at">The spike's top.</param>
    /// <param name="rateHz">Samples per second.</param>
    /// <param name="band">The channel's band.</param>
    public static SpikeSpectrum? Of(ReadOnlySpan<double> highPassed, int at, double rateHz, EmgBand band)
    {
        int half = (int)Math.Round(ReachSeconds * rateHz);
        if (band.ToHz < LeastTopHz || at < half || at + half >= highPassed.Length)
        {
            return null;
        }

        double[] windowed = new double[(2 * half) + 1];
        for (int i = 0; i < windowed.Length; i++)
        {
            windowed[i] = highPassed[at - half + i] * 0.5 * (1 + RepeatableMath.SinCosTurns((i - half) / (2.0 * (half + 1))).Cos);
        }

        double muscle = 0, all = 0, steep = 0, slope = 0;
        for (double hz = band.FromHz; hz <= band.ToHz; hz += StepHz)
        {
            double power = PowerAt(windowed, hz / rateHz);
            all += power;
            muscle += hz is >= FromHz and <= ToHz ? power : 0;
            slope += power * hz * hz;
            steep += hz > ToHz ? power * hz * hz : 0;
        }

        return all > 0 ? new SpikeSpectrum(muscle / all, steep / slope, ReturnOf(highPassed, at, rateHz)) : null;
    }

    private static double ReturnOf(ReadOnlySpan<double> highPassed, int at, double rateHz)
    {
        int reach = (int)Math.Round(ReturnSeconds * rateHz);
        (double least, double greatest) = Extremes.Of(highPassed.Slice(at - reach, (2 * reach) + 1));
        return (highPassed[at] > 0 ? -least : greatest) / Math.Abs(highPassed[at]);
    }

    private static double PowerAt(double[] windowed, double turnsPerSample)
    {
        double real = 0;
        double imaginary = 0;
        for (int i = 0; i < windowed.Length; i++)
        {
            (double sin, double cos) = RepeatableMath.SinCosTurns(i * turnsPerSample);
            real += windowed[i] * cos;
            imaginary += windowed[i] * sin;
        }

        return (real * real) + (imaginary * imaginary);
    }
}
