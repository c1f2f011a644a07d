using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>An amplifier that saturates below the limits that the file states.</summary>
/// <param name="Site">The site.</param>
/// <param name="RailUv">Distance of the rail from zero on both sides in µV.</param>
public sealed record HiddenRail(string Site, double RailUv) : Fault
{
    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made)
    {
        ArgumentNullException.ThrowIfNull(made);
        int rail = (int)Math.Round(RailUv / made.Plan.Amplifier.StepUv);
        return RailCount.Truths(made, this, Site, -rail, rail);
    }

    internal override void LimitAmplifier(SignalPath path)
    {
        foreach (ref double value in path.Plan.SamplesOf(Span).In(path.Site(Site).Input))
        {
            value = Math.Clamp(value, -RailUv, RailUv);
        }
    }
}
