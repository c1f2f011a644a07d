using System.Collections.Immutable;

namespace ChannelAudit.Setup;

/// <summary>One site: a pair of electrodes over a muscle.</summary>
public sealed record SiteSetup
{
    /// <summary>The word in <see cref="Adjacent"/> for the ground electrode, which is no site.</summary>
    public const string Ground = "ground";

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

    /// <summary>Names of sites close enough for gel to join, and <c>ground</c> for the ground electrode.</summary>
    public ImmutableArray<string> Adjacent { get; init; } = [];

    /// <summary>Whether gel can reach the ground electrode.</summary>
    public bool IsBesideGround => Adjacent.Contains(Ground, StringComparer.Ordinal);

    /// <summary>Trial label of this muscle's voluntary contraction, or null.</summary>
    public string? Task { get; init; }
}
