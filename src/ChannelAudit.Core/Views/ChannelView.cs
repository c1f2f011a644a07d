using System.Collections.Immutable;

namespace ChannelAudit.Views;

/// <summary>What a picture of a channel needs beside its result; kept only when pictures are asked for, and written nowhere.</summary>
public sealed record ChannelView
{
    /// <summary>The whole recording.</summary>
    public required Trace Whole { get; init; }

    /// <summary>The trial to look at, or null when there is none.</summary>
    public Closeup? Closeup { get; init; }

    /// <summary>The mean density over the whole recording in unit² per Hz, from 0 Hz on; empty when there is no segment.</summary>
    public required ImmutableArray<double> Density { get; init; }

    /// <summary>Width of a bin of the density in Hz.</summary>
    public required double BinHz { get; init; }

    /// <summary>The harmonics of the mains that count, in Hz.</summary>
    public required ImmutableArray<double> HarmonicsHz { get; init; }

    /// <summary>Midpoints of the seconds of <see cref="Levels"/>, in seconds.</summary>
    public required ImmutableArray<double> LevelTimesS { get; init; }

    /// <summary>The baseline, one level a second, in the unit of the channel.</summary>
    public required ImmutableArray<double> Levels { get; init; }

    /// <summary>The lower rail, or null when none is known.</summary>
    public required double? LowerRail { get; init; }

    /// <summary>The upper rail, or null when none is known.</summary>
    public required double? UpperRail { get; init; }

    /// <summary>The amplitude at rest in the band, root of P_rest; null when it is not known.</summary>
    public required double? RestRms { get; init; }

    /// <summary>Whether samples are microvolts.</summary>
    public required bool IsMicrovolts { get; init; }
}
