using System.Collections.Immutable;

namespace ChannelAudit.Detectability;

/// <summary>How much is planted.</summary>
public sealed record DetectabilityOptions
{
    /// <summary>Only the first minutes of the recording are used: they bound the time.</summary>
    public int Minutes { get; init; } = 15;

    /// <summary>Rounds: audits for each fault and size, each with other places.</summary>
    public int Repeats { get; init; } = 4;

    /// <summary>Names of the faults; empty for all.</summary>
    public ImmutableArray<string> Faults { get; init; } = [];

    /// <summary>Threads, 1 or more; the result does not depend on it.</summary>
    public int Jobs { get; init; } = 1;
}
