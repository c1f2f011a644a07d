using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Synthesis.Faults;

/// <summary>Mains that lies on the whole head and shows between two electrodes because their impedances differ.</summary>
/// <remarks>
/// Each electrode and the amplifier's input divide the common voltage: V·Z_in/(Z_in + Z). The channel shows the difference, in essence
/// V·(Z_2 − Z_1)/Z_in (voltage divider, by hand). Impedances are those of the plan; gel that joins electrodes is left out of it.
/// </remarks>
/// <param name="CommonUv">Mains voltage between head and amplifier, µV rms of all harmonics together.</param>
/// <param name="InputMegohm">Impedance of each amplifier input in MΩ.</param>
/// <param name="Hz">Mains frequency; it need not be a whole number.</param>
public sealed record CommonModeMains(double CommonUv, double InputMegohm = 100, double Hz = 50) : Fault
{
    /// <summary>Amplitudes of the harmonics relative to each other.</summary>
    public ImmutableArray<double> Harmonics { get; init; } = [1, 0, 0.25, 0, 0.1];

    /// <inheritdoc/>
    /// <remarks>One truth a site, in the order of the plan; a site with equal impedances has 0 µV.</remarks>
    public override ImmutableArray<Truth> TruthsIn(MadeRecording made)
    {
        ArgumentNullException.ThrowIfNull(made);
        return
        [
            .. made.Plan.Sites.Select((site, i) =>
                TruthOf(made, ReasonCode.LineNoise, [site.Name], "line_rms", Math.Abs(BetweenElectrodesUv(made.Plan, i)), "uV")),
        ];
    }

    internal override void AddInput(SignalPath path)
    {
        for (int i = 0; i < path.Sites.Length; i++)
        {
            new Oscillation(Hz, BetweenElectrodesUv(path.Plan, i), Harmonics, WanderHz: 0)
                .AddTo(path.Sites[i].Input, path.Plan.SamplesOf(Span), path.Plan.Rate.Value);
        }
    }

    /// <summary>What the channel shows, µV rms; negative where the first electrode has the higher impedance: the wave is turned over.</summary>
    private double BetweenElectrodesUv(SessionPlan plan, int site)
    {
        double[] kohm = ElectrodeStage.Impedances(plan);
        double inputKohm = 1000 * InputMegohm;
        double first = inputKohm / (inputKohm + kohm[2 * site]);
        double second = inputKohm / (inputKohm + kohm[(2 * site) + 1]);
        return CommonUv * (first - second);
    }
}
