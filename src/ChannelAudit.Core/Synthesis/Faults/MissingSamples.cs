using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>Samples that one channel does not have; only text can say so.</summary>
/// <param name="Site">The site.</param>
public sealed record MissingSamples(string Site) : Fault
{
    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made)
    {
        ArgumentNullException.ThrowIfNull(made);
        double gap = 1000 * made.Plan.SamplesOf(Span).Length / made.Plan.Rate.Value;
        return [TruthOf(made, ReasonCode.Dropout, [Site], "gap", gap, "ms")];
    }

    internal override void LoseSamples(SignalPath path) => path.Site(Site).Missing.Add(path.Plan.SamplesOf(Span));
}
