using System.Collections.Immutable;

namespace ChannelAudit.Detectability;

/// <summary>A fault that can be planted in a recording, in rising sizes.</summary>
internal sealed record PlantKind
{
    /// <summary>Its name in tables and options.</summary>
    public required string Name { get; init; }

    /// <summary>The reason that an audit should give.</summary>
    public required string Reason { get; init; }

    /// <summary>What it is, for people.</summary>
    public required string Title { get; init; }

    /// <summary>What its size counts.</summary>
    public required string Unit { get; init; }

    /// <summary>The sizes, from the mildest to the worst.</summary>
    public required ImmutableArray<double> Sizes { get; init; }

    /// <summary>Whether its size is in µV, so that a channel without a unit cannot have it.</summary>
    public bool NeedsMicrovolts { get; init; } = true;

    /// <summary>Whether all places have it at once: then one round is all there is.</summary>
    public bool IsPlantedOnce { get; init; }

    /// <summary>Rounds for each that was asked for: where a round has room for one or two places only.</summary>
    public int RoundsEach { get; init; } = 1;

    /// <summary>Where it can be planted, in no order; each place is clean as recorded.</summary>
    public required Func<PlantHost, IEnumerable<PlantPlace>> Places { get; init; }

    /// <summary>What is done at a place; the seed is that of the place.</summary>
    public required Func<PlantHost, PlantPlace, double, ulong, IEnumerable<PlantEdit>> Edits { get; init; }

    /// <summary>Which of a place's trials have the fault at a size; null: all of them.</summary>
    public Func<PlantHost, PlantPlace, double, IEnumerable<int>>? Having { get; init; }

    /// <summary>Why it cannot be planted in this recording whatever the place, or null.</summary>
    public Func<PlantHost, string?>? WhyNot { get; init; }
}
