using System.Collections.Immutable;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>A spike in every trial, always equally late: a trigger or stimulator that couples into the leads. No pops.</summary>
/// <param name="Site">The site.</param>
/// <param name="HeightUv">Height in µV.</param>
/// <param name="DelayS">Seconds from the onset.</param>
public sealed record StimulusSpikes(string Site, double HeightUv, decimal DelayS) : Fault
{
    /// <inheritdoc/>
    /// <remarks>A confuser: no measure has to show it.</remarks>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) => [];

    internal override void AddInput(SignalPath path)
    {
        foreach (PlannedTrial trial in path.Plan.Trials)
        {
            ElectrodePops.AddSpike(
                path.Site(Site).Input, (int)path.Plan.Rate.IndexAt(trial.OnsetS + DelayS), HeightUv, path.Plan.Rate.Value);
        }
    }
}
