using System.Collections.Immutable;
using ChannelAudit.Signals.Arithmetic;

namespace ChannelAudit.Synthesis;

/// <summary>A steady tone with harmonics whose frequency may wander slowly.</summary>
/// <param name="Hz">Frequency.</param>
/// <param name="RmsUv">µV rms of all harmonics together.</param>
/// <param name="Harmonics">Amplitudes of the 1st, 2nd, ... harmonic, relative to each other.</param>
/// <param name="WanderHz">How far the frequency swings to either side, once a minute.</param>
internal readonly record struct Oscillation(double Hz, double RmsUv, ImmutableArray<double> Harmonics, double WanderHz)
{
    private const double WanderPeriodS = 60;

    /// <summary>Adds the tone to a stretch; its phase counts from the start of the recording, so it is one tone in all channels.</summary>
    internal void AddTo(double[] signal, SampleSpan span, double rateHz)
    {
        double squares = 0;
        foreach (double amplitude in Harmonics)
        {
            squares += amplitude * amplitude;
        }

        double scale = RmsUv * Math.Sqrt(2 / squares);
        double swing = WanderHz * WanderPeriodS / (2 * Math.PI);
        for (int i = span.From; i < span.To; i++)
        {
            double time = i / rateHz;

            // The frequency f + w·sin(2πt/T), integrated over time.
            double turns = Hz * time;
            turns -= WanderHz == 0 ? 0 : swing * RepeatableMath.SinCosTurns(time / WanderPeriodS).Cos;
            double sum = 0;
            for (int harmonic = 0; harmonic < Harmonics.Length; harmonic++)
            {
                if (Harmonics[harmonic] != 0)
                {
                    sum += Harmonics[harmonic] * RepeatableMath.SinCosTurns(turns * (harmonic + 1)).Sin;
                }
            }

            signal[i] += scale * sum;
        }
    }
}
