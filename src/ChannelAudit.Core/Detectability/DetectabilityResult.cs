using System.Collections.Immutable;

namespace ChannelAudit.Detectability;

/// <summary>What silence means in one recording: how often known faults of rising size, planted in it, are found.</summary>
public sealed record DetectabilityResult
{
    /// <summary>The recording's id.</summary>
    public required string Id { get; init; }

    /// <summary>SHA-256 of the file.</summary>
    public required string Sha256 { get; init; }

    /// <summary>SHA-256 of the limits in force.</summary>
    public required string CriteriaSha256 { get; init; }

    /// <summary>SHA-256 of the setup file, or null.</summary>
    public string? SetupSha256 { get; init; }

    /// <summary>The hash of the trials: <see cref="TrialsKey"/>.</summary>
    public required string TrialsSha256 { get; init; }

    /// <summary>Length of what was used, from the start, in seconds.</summary>
    public required double UsedS { get; init; }

    /// <summary>Length of the recording in seconds.</summary>
    public required double DurationS { get; init; }

    /// <summary>Rounds.</summary>
    public required int Repeats { get; init; }

    /// <summary>The faults in the order in which they are shown.</summary>
    public required ImmutableArray<DetectedFault> Faults { get; init; }
}
