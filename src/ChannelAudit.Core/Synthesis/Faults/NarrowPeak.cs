using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>A steady tone that is not mains: a display, a strobe, a stimulator.</summary>
/// <param name="Sites">The sites that pick it up.</param>
/// <param name="RmsUv">µV rms.</param>
/// <param name="Hz">Its frequency.</param>
public sealed record NarrowPeak(ImmutableArray<string> Sites, double RmsUv, double Hz) : Fault
{
    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) =>
        [TruthOf(made, ReasonCode.NarrowBand, Sites, "narrow_rms", RmsUv, "uV")];

    internal override void AddInput(SignalPath path)
    {
        foreach (string site in Sites)
        {
            new Oscillation(Hz, RmsUv, [1], 0).AddTo(path.Site(site).Input, path.Plan.SamplesOf(Span), path.Plan.Rate.Value);
        }
    }
}
