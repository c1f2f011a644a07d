using System.Collections.Immutable;

namespace ChannelAudit.Setup;

/// <summary>How the trials will be scored: the filter that the samples go through first.</summary>
public sealed record ScoringSetup
{
    /// <summary>The order where none is given: 12 dB an octave.</summary>
    public const int UsualOrder = 2;

    /// <summary>Corner of the high-pass in Hz; null: none.</summary>
    public double? HighpassHz { get; init; }

    /// <summary>Corner of the low-pass in Hz; null: none.</summary>
    public double? LowpassHz { get; init; }

    /// <summary>Frequencies that a notch takes out, in Hz, ascending; each harmonic is named by itself.</summary>
    public ImmutableArray<double> NotchesHz { get; init; } = [];

    /// <summary>Butterworth order of high-pass and low-pass.</summary>
    public int Order { get; init; } = UsualOrder;

    /// <summary>Whether a filter is stated at all.</summary>
    public bool HasFilter => HighpassHz is not null || LowpassHz is not null || !NotchesHz.IsEmpty;
}
