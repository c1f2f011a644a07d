namespace ChannelAudit.Synthesis;

/// <summary>The amplifier and its converter.</summary>
public sealed record AmplifierPlan
{
    /// <summary>The amplifier's noise in µV rms in the band of 20 to 450 Hz.</summary>
    public double NoiseUv { get; init; } = 0.45;

    /// <summary>High-pass cut-off in Hz (Butterworth, order 2); 0: coupled to DC.</summary>
    public double HighpassHz { get; init; }

    /// <summary>Low-pass cut-off in Hz (Butterworth, order 2); null: flat up to half the rate, as an oversampling converter is.</summary>
    public double? LowpassHz { get; init; }

    /// <summary>Each channel's offset is drawn between minus this and this, in µV.</summary>
    public double OffsetUv { get; init; } = 40;

    /// <summary>Each channel's slow settling is drawn between minus this and this, in µV/min.</summary>
    public double SettlingUvPerMin { get; init; } = 10;

    /// <summary>Bits of the converter: 16 for EDF, up to 24 for BDF.</summary>
    public int Bits { get; init; } = 16;

    /// <summary>The step between two codes in µV; the rails lie at ±2^(bits−1) steps.</summary>
    public double StepUv { get; init; } = 0.1;
}
