using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>A pause of the whole recording: no channel has the samples; written as EDF+D or BDF+D.</summary>
public sealed record RecordingGap : Fault
{
    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made)
    {
        ArgumentNullException.ThrowIfNull(made);
        double gap = 1000 * made.Plan.SamplesOf(Span).Length / made.Plan.Rate.Value;
        return [TruthOf(made, ReasonCode.Dropout, [.. made.Plan.Sites.Select(site => site.Name)], "gap", gap, "ms")];
    }

    internal override void LoseSamples(SignalPath path) => path.Gaps.Add(path.Plan.SamplesOf(Span));
}
