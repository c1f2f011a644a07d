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

    /// <summary>The step between two codes in µV.</summary>
    public double StepUv { get; init; } = 0.1;

    /// <summary>The lowest code: −2^(bits−1); above 16 bits −8 000 000, so that the rail fits the 8 characters of a header.</summary>
    public int LowestCode => Bits > 16 ? -RoundReach : -(1 << (Bits - 1));

    /// <summary>The highest code: 2^(bits−1) − 1; above 16 bits 8 000 000.</summary>
    public int HighestCode => Bits > 16 ? RoundReach : (1 << (Bits - 1)) - 1;

    private const int RoundReach = 8_000_000;
}
