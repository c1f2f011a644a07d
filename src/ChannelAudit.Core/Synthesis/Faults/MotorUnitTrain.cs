using System.Collections.Immutable;
using ChannelAudit.Signals.Arithmetic;
using ChannelAudit.Signals.Random;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>A single motor unit that fires: spikes alike in shape and sign, at nearly even intervals. Physiology, no pops.</summary>
/// <param name="Site">The site.</param>
/// <param name="HeightUv">Height in µV.</param>
/// <param name="FiringHz">Spikes a second.</param>
public sealed record MotorUnitTrain(string Site, double HeightUv, double FiringHz) : Fault
{
    // Three phases within 12 ms: a wave of 8 ms under a raised cosine, which has the muscle's own spectrum, around 125 Hz.
    private const double DurationS = 0.012;
    private const double WaveS = 0.008;

    // How much intervals and heights scatter, either way.
    private const double IntervalScatter = 0.2;
    private const double HeightScatter = 0.15;

    /// <inheritdoc/>
    /// <remarks>A confuser: no measure has to show it.</remarks>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) => [];

    internal override void AddInput(SignalPath path)
    {
        SampleSpan span = path.Plan.SamplesOf(Span);
        Span<double> input = span.In(path.Site(Site).Input);
        Pcg32 random = NoiseStream.Of(path.Plan.Seed, "unit:" + Site);
        double rate = path.Plan.Rate.Value;
        for (double at = rate / FiringHz; at < input.Length; at += rate / FiringHz * Scattered(random, IntervalScatter))
        {
            AddPotential(input, (int)at, HeightUv * Scattered(random, HeightScatter), rate);
        }
    }

    private static double Scattered(Pcg32 random, double most) => 1 + (most * ((2 * random.NextDouble()) - 1));

    private static void AddPotential(Span<double> input, int top, double heightUv, double rateHz)
    {
        int half = (int)(DurationS / 2 * rateHz);
        for (int i = Math.Max(0, top - half); i <= Math.Min(input.Length - 1, top + half); i++)
        {
            double seconds = (i - top) / rateHz;
            double bell = 0.5 * (1 + RepeatableMath.SinCosTurns(seconds / DurationS).Cos);
            input[i] += heightUv * bell * RepeatableMath.SinCosTurns(seconds / WaveS).Cos;
        }
    }
}
