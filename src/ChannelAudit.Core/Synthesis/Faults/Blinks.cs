using System.Collections.Immutable;
using ChannelAudit.Signals.Arithmetic;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>Blinks as sites at the eye see them: one smooth bump of a quarter second every few seconds. Physiology, no fault.</summary>
/// <param name="Site">The site.</param>
/// <param name="PeakUv">Height in µV.</param>
/// <param name="EveryS">Seconds from one to the next; the first comes after half of that.</param>
public sealed record Blinks(string Site, double PeakUv, decimal EveryS) : Fault
{
    /// <summary>How long one lasts, in seconds.</summary>
    public const decimal DurationS = 0.25M;

    /// <inheritdoc/>
    /// <remarks>A confuser: no measure has to show it.</remarks>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) => [];

    internal override void AddInput(SignalPath path)
    {
        SampleSpan span = path.Plan.SamplesOf(Span);
        Span<double> input = span.In(path.Site(Site).Input);
        double rate = path.Plan.Rate.Value;
        int length = (int)((double)DurationS * rate);
        for (double startS = (double)EveryS / 2; (startS * rate) + length <= input.Length; startS += (double)EveryS)
        {
            int start = (int)(startS * rate);
            for (int i = 0; i < length; i++)
            {
                // Raised cosine: starts and ends without a corner.
                input[start + i] += PeakUv * 0.5 * (1 - RepeatableMath.SinCosOfPart(i, length).Cos);
            }
        }
    }
}
