using System.Collections.Immutable;

namespace ChannelAudit.Findings.Bridges;

/// <summary>What the medians of a pair are expected to be when something is the case; sizes, 0 to 1.</summary>
/// <remarks>
/// Joints of no resistance up to that of a contact, amplifier noise up to a quarter of the electrode noise (in power), contractions of 10 to 100 times
/// what the other site has of its own: calculated by <see cref="JoinedElectrodes"/>. Crosstalk of a tenth to a quarter of the amplitude (the most that
/// is published for the face, Lapatki et al. 2003) is calculated alike; that none of it is left above 300 Hz, and what separate sites show
/// by chance, comes from simulated electrodes (docs/measures/bridge.md).
/// </remarks>
/// <param name="Name">What is the case.</param>
/// <param name="Rest">Correlation at rest.</param>
/// <param name="HighRest">Correlation at rest above 300 Hz.</param>
/// <param name="Contraction">Correlation while one contracts.</param>
/// <param name="Gain">The part of a contraction that is seen at the other site.</param>
public sealed record BridgePattern(
    string Name, (double From, double To) Rest, (double From, double To) HighRest, (double From, double To) Contraction, (double From, double To) Gain)
{
    private const double HighestResistance = 1;
    private const double AmplifierNoise = 0.25;
    private const double LeastRise = 10;
    private const double MostRise = 100;
    private const double LeastCrosstalk = 0.1;
    private const double MostCrosstalk = 0.25;
    private const double Chance = 0.05;

    /// <summary>Sites joined at both electrodes, joined at one, crosstalk, and separate sites.</summary>
    public static ImmutableArray<BridgePattern> All { get; } =
    [
        new(
            "both electrodes joined",
            (JoinedElectrodes.RestBoth(HighestResistance, AmplifierNoise), JoinedElectrodes.RestBoth(0)),
            (JoinedElectrodes.RestBoth(HighestResistance, AmplifierNoise), JoinedElectrodes.RestBoth(0)),
            Contractions(JoinedElectrodes.GainBoth(HighestResistance), JoinedElectrodes.GainBoth(0)),
            (JoinedElectrodes.GainBoth(HighestResistance), JoinedElectrodes.GainBoth(0))),
        new(
            "one electrode joined",
            (JoinedElectrodes.RestOne(HighestResistance, AmplifierNoise), JoinedElectrodes.MusclesOne(0)),
            (JoinedElectrodes.RestOne(HighestResistance, AmplifierNoise), JoinedElectrodes.RestOne(0)),
            Contractions(JoinedElectrodes.GainOne(HighestResistance), JoinedElectrodes.GainOne(0)),
            (JoinedElectrodes.GainOne(HighestResistance), JoinedElectrodes.GainOne(0))),
        new(
            "crosstalk",
            (0, 2 * MostCrosstalk / (1 + (MostCrosstalk * MostCrosstalk))),
            (0, Chance),
            Contractions(LeastCrosstalk, MostCrosstalk),
            (LeastCrosstalk, MostCrosstalk)),
        new("separate sites", (0, Chance), (0, Chance), (0, 2 * Chance), (0, Chance)),
    ];

    private static (double From, double To) Contractions(double leastGain, double mostGain) =>
        (JoinedElectrodes.Contraction(leastGain, LeastRise), JoinedElectrodes.Contraction(mostGain, MostRise));
}
