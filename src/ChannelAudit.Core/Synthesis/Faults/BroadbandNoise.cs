using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>White noise of a poor contact or a noisy amplifier.</summary>
/// <param name="Sites">The sites that have it, each its own.</param>
/// <param name="RmsUv">µV rms in the band of 20 to 450 Hz.</param>
public sealed record BroadbandNoise(ImmutableArray<string> Sites, double RmsUv) : Fault
{
    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) =>
        [TruthOf(made, ReasonCode.NoiseFloor, Sites, "rest_rms", RmsUv, "uV")];

    internal override void AddInput(SignalPath path)
    {
        SampleSpan span = path.Plan.SamplesOf(Span);
        foreach (string site in Sites)
        {
            double[] noise = new double[span.Length];
            ElectrodeStage.AddNoise(path, "contact:" + site, RmsUv, noise);
            Span<double> input = span.In(path.Site(site).Input);
            for (int i = 0; i < noise.Length; i++)
            {
                input[i] += noise[i];
            }
        }
    }
}
