using System.Collections.Immutable;

namespace ChannelAudit.Trends;

/// <summary>What is kept of one recording.</summary>
public sealed record TrendSession
{
    /// <summary>The recording's id in its audit.</summary>
    public required string Id { get; init; }

    /// <summary>The day; null when nobody says.</summary>
    public DateOnly? Day { get; init; }

    /// <summary>The lab; null when the setup names none.</summary>
    public string? Lab { get; init; }

    /// <summary>The amplifier; null when the setup names none.</summary>
    public string? Amplifier { get; init; }

    /// <summary>Who prepared the sites, as a code; null unless the setup says that people may be shown.</summary>
    public string? Technician { get; init; }

    /// <summary>Pairs of channels that are joined or may be.</summary>
    public int BridgedPairs { get; init; }

    /// <summary>The channels in file order.</summary>
    public required ImmutableArray<TrendChannel> Channels { get; init; }
}
