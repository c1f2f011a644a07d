using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>A converter with a narrow range: the rails that the file states are reached. Always the whole recording.</summary>
/// <param name="Site">The site.</param>
/// <param name="RailUv">Distance of the rails from zero in µV, rounded to the converter's step.</param>
public sealed record HeaderRail(string Site, double RailUv) : Fault
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
        int rail = (int)Math.Round(RailUv / path.Plan.Amplifier.StepUv);
        SiteSignals signals = path.Site(Site);
        signals.LowestCode = -rail;
        signals.HighestCode = rail;
    }
}
