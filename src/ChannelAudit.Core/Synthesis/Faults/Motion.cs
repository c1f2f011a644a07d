using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>Sway of leads or skin, 0.5 to 8 Hz, the same in all its sites.</summary>
/// <param name="Sites">The sites that carry it.</param>
/// <param name="RmsUv">µV rms of the whole sway.</param>
public sealed record Motion(ImmutableArray<string> Sites, double RmsUv) : Fault
{
    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made)
    {
        // The measure looks at 2 to 15 Hz only (methods 1.7).
        double seen = RmsUv * Math.Sqrt(NoiseBand.Motion.ShareBetween(2, 15));
        return [TruthOf(made, ReasonCode.LowFrequency, Sites, "lowfreq_rms", seen, "uV")];
    }

    internal override void AddInput(SignalPath path)
    {
        SampleSpan span = path.Plan.SamplesOf(Span);
        double[] sway = new double[span.Length];
        ShapedNoise.Fill(
            NoiseStream.Of(path.Plan.Seed, "motion:" + string.Join('+', Sites)), NoiseBand.Motion, path.Plan.Rate.Value, sway);
        foreach (string site in Sites)
        {
            Span<double> input = span.In(path.Site(site).Input);
            for (int i = 0; i < sway.Length; i++)
            {
                input[i] += RmsUv * sway[i];
            }
        }
    }
}
