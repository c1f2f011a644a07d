using System.Collections.Immutable;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>A resting level that rises or falls evenly: tension, or contact that gets worse.</summary>
/// <param name="Site">The site.</param>
/// <param name="PercentPerMin">Change of the resting amplitude, noise included, in % of its middle per minute.</param>
public sealed record LevelTrend(string Site, double PercentPerMin) : Fault
{
    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) =>
        [TruthOf(made, "resting-level", [Site], "level_trend", PercentPerMin, "%/min")];

    internal override void ShapeLevels(SignalPath path)
    {
        SiteSignals signals = path.Site(Site);
        SampleSpan span = path.Plan.SamplesOf(Span);
        double noise = path.Plan.Amplifier.NoiseUv;
        double electrode = signals.Site.ElectrodeNoiseUv;
        double noisePower = (noise * noise) + (2 * electrode * electrode);
        double rest = signals.Site.RestUv;
        double middle = Math.Sqrt((rest * rest) + noisePower);
        double perSample = PercentPerMin / 100 / 60 / path.Plan.Rate.Value;
        Span<double> levels = span.In(signals.LevelUv);
        for (int i = 0; i < levels.Length; i++)
        {
            // Exactly the resting level: whatever a trial asks for stays as it is. The noise does not change, so the muscle
            // makes up for what it does not contribute.
            if (levels[i] == rest)
            {
                double total = middle * (1 + (perSample * (i - (levels.Length / 2.0))));
                levels[i] = Math.Sqrt(Math.Max(0, (total * Math.Abs(total)) - noisePower));
            }
        }
    }
}
