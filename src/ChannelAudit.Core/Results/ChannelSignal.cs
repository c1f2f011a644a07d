using System.Collections.Immutable;

namespace ChannelAudit.Results;

/// <summary>What a channel is compared by with the same channel of other recordings; it decides nothing within its own.</summary>
public sealed record ChannelSignal
{
    /// <summary><c>uV</c>, or <c>none</c> where the file states no unit and samples are raw codes.</summary>
    public required string Unit { get; init; }

    /// <summary>High-pass that the file states, in Hz; 0: coupled to DC; null: not stated.</summary>
    public double? HighpassHz { get; init; }

    /// <summary>Low-pass that the file states, in Hz, or null.</summary>
    public double? LowpassHz { get; init; }

    /// <summary>Notches that the file states, in Hz.</summary>
    public ImmutableArray<double> NotchesHz { get; init; } = [];

    /// <summary>What a tenth of the seconds stay below: amplitude in the EMG band, in the unit; null below 10 s.</summary>
    public double? LevelLow { get; init; }

    /// <summary>What half of the seconds stay below.</summary>
    public double? LevelMiddle { get; init; }

    /// <summary>What 95 of 100 seconds stay below.</summary>
    public double? LevelHigh { get; init; }

    /// <summary>Calm density from 3 to 8 Hz over that from 80 to 150 Hz, in dB; null where it cannot be measured.</summary>
    public double? LowDb { get; init; }

    /// <summary>Calm density from 300 to 450 Hz over that from 80 to 150 Hz, in dB; null where it cannot be measured.</summary>
    public double? HighDb { get; init; }

    /// <summary>Slow deflections upwards, of 0.1 to 1 s, as of blinks.</summary>
    public int SwingsUp { get; init; }

    /// <summary>Slow deflections downwards.</summary>
    public int SwingsDown { get; init; }

    /// <summary>Four hexadecimal digits for each of the first 32 whole seconds that are not flat: where its extremes lie, whatever gain, offset and sign.</summary>
    public string Print { get; init; } = string.Empty;
}
