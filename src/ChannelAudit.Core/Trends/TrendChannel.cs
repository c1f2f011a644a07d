using System.Collections.Immutable;

namespace ChannelAudit.Trends;

/// <summary>What is kept of a channel of one recording.</summary>
public sealed record TrendChannel
{
    /// <summary>The site, or the channel's label without a setup.</summary>
    public required string Site { get; init; }

    /// <summary>Ids of its two electrodes, first and second; empty when the setup names none.</summary>
    public ImmutableArray<string> Electrodes { get; init; } = [];

    /// <summary>Whether its computed verdict is not pass.</summary>
    public required bool IsNotPassed { get; init; }

    /// <summary>Amplitude in the band at rest, µV; null where it was not measured.</summary>
    public double? RestUv { get; init; }

    /// <summary>Mains and harmonics, µV; null where they were not measured.</summary>
    public double? MainsUv { get; init; }

    /// <summary>Whether it is joined with another channel or may be; null where that was not assessed.</summary>
    public bool? IsBridged { get; init; }

    /// <summary>The latest reading between its electrodes before the session, kΩ.</summary>
    public double? PairKohm { get; init; }

    /// <summary>What the first electrode takes part with in it, kΩ; null where the readings do not say.</summary>
    public double? FirstKohm { get; init; }

    /// <summary>What the second one does.</summary>
    public double? SecondKohm { get; init; }

    /// <summary>How much the reading fell before the session, % of the first; null with fewer than two.</summary>
    public double? FallPercent { get; init; }
}
