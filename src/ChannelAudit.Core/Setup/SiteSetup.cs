using System.Collections.Immutable;

namespace ChannelAudit.Setup;

/// <summary>One site: a pair of electrodes over a muscle.</summary>
public sealed record SiteSetup
{
    /// <summary>The name used in tables and figures.</summary>
    public required string Name { get; init; }

    /// <summary>Label in the recording.</summary>
    public required string Channel { get; init; }

    /// <summary>The muscle.</summary>
    public string? Muscle { get; init; }

    /// <summary><c>left</c> or <c>right</c>, or null.</summary>
    public string? Side { get; init; }

    /// <summary>Position on the sketch, x and y, or empty.</summary>
    public ImmutableArray<double> Position { get; init; } = [];

    /// <summary>Ids of the two electrodes, first minus second, or empty.</summary>
    public ImmutableArray<string> Electrodes { get; init; } = [];

    /// <summary>Names of sites close enough for gel to join.</summary>
    public ImmutableArray<string> Adjacent { get; init; } = [];

    /// <summary>Trial label of this muscle's voluntary contraction, or null.</summary>
    public string? Task { get; init; }
}
