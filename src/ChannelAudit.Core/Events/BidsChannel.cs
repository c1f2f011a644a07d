using System.Collections.Immutable;

namespace ChannelAudit.Events;

/// <summary>One row of a <c>*_channels.tsv</c> (BIDS specification, "Electromyography", channels description).</summary>
/// <param name="Name">The channel's label.</param>
/// <param name="Type">Its type in upper case, such as <c>EMG</c>, <c>TRIG</c>, <c>MISC</c>; null when not stated.</param>
/// <param name="Units">Its unit as written, or null.</param>
/// <param name="LowCutoffHz">High-pass cut-off in Hz, or null.</param>
/// <param name="HighCutoffHz">Low-pass cut-off in Hz, or null.</param>
/// <param name="NotchesHz">Notch frequencies in Hz, empty when none is stated.</param>
/// <param name="SamplingHz">Samples per second, or null.</param>
/// <param name="Status"><c>good</c>, <c>bad</c> or null.</param>
public sealed record BidsChannel(
    string Name,
    string? Type,
    string? Units,
    double? LowCutoffHz,
    double? HighCutoffHz,
    ImmutableArray<double> NotchesHz,
    double? SamplingHz,
    string? Status);
