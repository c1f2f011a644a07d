using System.Collections.Immutable;

namespace ChannelAudit.Recordings;

/// <summary>Filters that a file claims were applied before storing.</summary>
/// <param name="HighpassHz">High-pass cut-off, null when not stated; 0 means "DC".</param>
/// <param name="LowpassHz">Low-pass cut-off, null when not stated.</param>
/// <param name="NotchesHz">Notch frequencies.</param>
/// <param name="Text">The field as it stands in the file.</param>
public sealed record Prefilter(double? HighpassHz, double? LowpassHz, ImmutableArray<double> NotchesHz, string Text)
{
    /// <summary>Names of filters that a companion says were applied after digitising, or null.</summary>
    public string? Software { get; init; }

    /// <summary>Nothing is stated.</summary>
    public static Prefilter Unknown { get; } = new(null, null, [], string.Empty);
}
