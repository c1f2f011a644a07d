namespace ChannelAudit.Results;

/// <summary>Medians over the 1 s segments at rest and in the contractions of each channel; null where there are too few.</summary>
public sealed record BridgeEvidence
{
    /// <summary>Segments in which both channels were quiet.</summary>
    public int RestSegments { get; init; }

    /// <summary>Segments with a contraction of the first channel.</summary>
    public int ActiveASegments { get; init; }

    /// <summary>Segments with a contraction of the second channel.</summary>
    public int ActiveBSegments { get; init; }

    /// <summary>Median ρ at rest, 30 to 250 Hz.</summary>
    public double? RhoRest { get; init; }

    /// <summary>Median ρ at rest, 300 to 450 Hz.</summary>
    public double? RhoHighRest { get; init; }

    /// <summary>Median imaginary part at rest.</summary>
    public double? ImaginaryRest { get; init; }

    /// <summary>Median ρ in contractions of the first channel.</summary>
    public double? RhoActiveA { get; init; }

    /// <summary>Median ρ in contractions of the second channel.</summary>
    public double? RhoActiveB { get; init; }

    /// <summary>Median gain from the first to the second in contractions of the first.</summary>
    public double? GainAb { get; init; }

    /// <summary>Median gain from the second to the first in contractions of the second.</summary>
    public double? GainBa { get; init; }

    /// <summary>Why a bridge could not be judged, or null.</summary>
    public string? NotAssessed { get; init; }

    /// <summary>Which electrodes the sign allows and how many joints the sizes fit, in words; null when nothing was found.</summary>
    public string? Electrodes { get; init; }

    /// <summary>What was decided, in words.</summary>
    public required string Decision { get; init; }

    /// <summary>Why it was decided so, in a sentence or two.</summary>
    public required string Why { get; init; }
}
