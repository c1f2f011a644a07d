using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Signals.Arithmetic;
using ChannelAudit.Signals.Random;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>Spikes of 2 ms of a contact that makes and breaks, spread over a stretch, up and down by chance.</summary>
/// <param name="Site">The site.</param>
/// <param name="HeightUv">Height in µV.</param>
/// <param name="Count">How many.</param>
public sealed record ElectrodePops(string Site, double HeightUv, int Count) : Fault
{
    /// <summary>How long one lasts, in seconds.</summary>
    public const double DurationS = 0.002;

    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) => [TruthOf(made, ReasonCode.Pops, [Site], "pops", Count, "1")];

    internal override void AddInput(SignalPath path)
    {
        SampleSpan span = path.Plan.SamplesOf(Span);
        Pcg32 random = NoiseStream.Of(path.Plan.Seed, "pops:" + Site);
        for (int i = 0; i < Count; i++)
        {
            // Somewhere in the middle half of its share of the stretch.
            double place = (i + 0.25 + (0.5 * random.NextDouble())) / Count;
            AddSpike(span.In(path.Site(Site).Input), (int)(place * span.Length), random.NextDouble() < 0.5 ? -HeightUv : HeightUv, path.Plan.Rate.Value);
        }
    }

    /// <summary>Adds a raised cosine whose top lies on a sample.</summary>
    internal static void AddSpike(Span<double> input, int top, double heightUv, double rateHz)
    {
        int half = (int)Math.Ceiling(DurationS / 2 * rateHz);
        double length = DurationS * rateHz;
        for (int offset = -half; offset <= half; offset++)
        {
            double turns = offset / length;
            if (Math.Abs(turns) < 0.5 && top + offset >= 0 && top + offset < input.Length)
            {
                input[top + offset] += heightUv * 0.5 * (1 + RepeatableMath.SinCosTurns(turns).Cos);
            }
        }
    }
}
