using System.Collections.Immutable;

namespace ChannelAudit.Synthesis;

/// <summary>One site of a made recording: a pair of electrodes over a muscle.</summary>
public sealed record SitePlan
{
    /// <summary>The three sites of the face that this tool is about.</summary>
    public static ImmutableArray<SitePlan> Face { get; } =
    [
        new()
        {
            Name = "cheek", Label = "EMG cheek", Muscle = "zygomaticus major", Task = "raise lip corner", Adjacent = ["eye"],
        },
        new()
        {
            Name = "brow", Label = "EMG brow", Muscle = "corrugator supercilii", Task = "draw brows together",
        },
        new()
        {
            Name = "eye", Label = "EMG eye", Muscle = "orbicularis oculi", Task = "close eyes firmly", Adjacent = ["cheek"],
        },
    ];

    /// <summary>The name used in tables and figures.</summary>
    public required string Name { get; init; }

    /// <summary>The channel's label in the file.</summary>
    public required string Label { get; init; }

    /// <summary>The muscle, or null.</summary>
    public string? Muscle { get; init; }

    /// <summary>Label of the trial that asks for this muscle's contraction, or null.</summary>
    public string? Task { get; init; }

    /// <summary>Sites close enough for gel to join.</summary>
    public ImmutableArray<string> Adjacent { get; init; } = [];

    /// <summary>The muscle's amplitude at rest in µV rms.</summary>
    public double RestUv { get; init; } = 1.5;

    /// <summary>Noise of each of the two electrodes in µV rms in the band of 20 to 450 Hz.</summary>
    public double ElectrodeNoiseUv { get; init; } = 0.5;

    /// <summary>Impedance of the first electrode in kΩ; null: drawn from 5 kΩ ± 30 %.</summary>
    public double? FirstKohm { get; init; }

    /// <summary>Impedance of the second electrode in kΩ; null: drawn from 5 kΩ ± 30 %.</summary>
    public double? SecondKohm { get; init; }

    /// <summary>
    /// How much nearer each of the muscle's two sources lies to one electrode, 0 to 0.5: at 0 both electrodes see the same
    /// with opposite signs, at 0.5 each sees a source of its own.
    /// </summary>
    public double Asymmetry { get; init; } = 0.1;
}
