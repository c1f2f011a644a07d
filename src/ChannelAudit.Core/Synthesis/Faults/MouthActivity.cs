using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Signals.Arithmetic;
using ChannelAudit.Signals.Random;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>Chewing or speech: bursts of muscle activity at the rhythm of bites or syllables, seen at the cheek and in part at the eye. No fault of electrodes.</summary>
/// <param name="Site">The site at the mouth.</param>
/// <param name="RmsUv">Amplitude in µV rms over whole cycles.</param>
/// <param name="BurstsPerS">Bursts a second: 0.7 to 2.5 in chewing, 2.5 to 6 in speech.</param>
public sealed record MouthActivity(string Site, double RmsUv, double BurstsPerS) : Fault
{
    // How much one cycle is longer or shorter than another, either way.
    private const double CycleScatter = 0.15;

    // Root of the mean of the fourth power of a sine: what a squared sine leaves of an amplitude.
    private const double EnvelopeRms = 0.61237243569579452;

    /// <summary>Another site that sees it, or null.</summary>
    public string? AlsoAt { get; init; }

    /// <summary>The share of the amplitude that it sees.</summary>
    public double AlsoShare { get; init; } = 0.3;

    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) =>
        [TruthOf(made, ReasonCode.MouthActivity, AlsoAt is { } other ? [Site, other] : [Site], "emg_rms", RmsUv, "uV")];

    internal override void AddInput(SignalPath path)
    {
        SampleSpan span = path.Plan.SamplesOf(Span);
        double[] noise = new double[span.Length];
        double rate = path.Plan.Rate.Value;
        ShapedNoise.Fill(NoiseStream.Of(path.Plan.Seed, "mouth:" + Site), NoiseBand.Muscle, rate, noise);
        Modulate(noise, NoiseStream.Of(path.Plan.Seed, "mouth-rhythm:" + Site), rate / BurstsPerS);
        Add(noise, span.In(path.Site(Site).Input), RmsUv);
        if (AlsoAt is { } other)
        {
            Add(noise, span.In(path.Site(other).Input), RmsUv * AlsoShare);
        }
    }

    private static void Modulate(double[] noise, Pcg32 random, double cycle)
    {
        for (int start = 0; start < noise.Length;)
        {
            int length = Math.Max(1, (int)(cycle * (1 + (CycleScatter * ((2 * random.NextDouble()) - 1)))));
            for (int i = start; i < Math.Min(noise.Length, start + length); i++)
            {
                // Squared sine: 0.5·(1 − cos).
                noise[i] *= 0.5 * (1 - RepeatableMath.SinCosOfPart(i - start, length).Cos) / EnvelopeRms;
            }

            start += length;
        }
    }

    private static void Add(double[] noise, Span<double> input, double rmsUv)
    {
        for (int i = 0; i < noise.Length; i++)
        {
            input[i] += rmsUv * noise[i];
        }
    }
}
