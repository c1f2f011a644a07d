using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>Mains in one channel (its electrodes), or with the same phase in several (ground or surroundings).</summary>
/// <param name="Sites">The sites that pick it up.</param>
/// <param name="RmsUv">µV rms of all harmonics together.</param>
/// <param name="Hz">Mains frequency; it need not be a whole number.</param>
public sealed record MainsPickup(ImmutableArray<string> Sites, double RmsUv, double Hz = 50) : Fault
{
    /// <summary>Amplitudes of the harmonics relative to each other; by default the odd ones that lamps and supplies make.</summary>
    public ImmutableArray<double> Harmonics { get; init; } = [1, 0, 0.25, 0, 0.1];

    /// <summary>How far the frequency swings to either side, once a minute, in Hz.</summary>
    public double WanderHz { get; init; }

    /// <inheritdoc/>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made) =>
        [TruthOf(made, ReasonCode.LineNoise, Sites, "line_rms", RmsUv, "uV")];

    internal override void AddInput(SignalPath path)
    {
        foreach (string site in Sites)
        {
            new Oscillation(Hz, RmsUv, Harmonics, WanderHz)
                .AddTo(path.Site(site).Input, path.Plan.SamplesOf(Span), path.Plan.Rate.Value);
        }
    }
}
