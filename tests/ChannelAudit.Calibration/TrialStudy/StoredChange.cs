using System.Collections.Immutable;
using ChannelAudit.Synthesis;

namespace ChannelAudit.Calibration.TrialStudy;

/// <summary>What went wrong between the amplifier and the file.</summary>
internal sealed record StoredChange
{
    /// <summary>Whether the samples are rectified.</summary>
    public bool IsRectified { get; init; }

    /// <summary>How many times too large the stored values are.</summary>
    public double Gain { get; init; } = 1;

    /// <summary>The events that are stored in place of the trials; null: the trials.</summary>
    public Func<ImmutableArray<PlannedTrial>, IEnumerable<PlannedTrial>>? Events { get; init; }

    /// <summary>The share of the file's bytes that is left.</summary>
    public double Kept { get; init; } = 1;

    /// <summary>Bytes at the start that have become zero.</summary>
    public int Zeroed { get; init; }

    /// <summary>What stands in the header's field of the participant; null: nothing about anybody.</summary>
    public string? Patient { get; init; }

    /// <summary>Whether samples or events are stored otherwise than they were made.</summary>
    internal bool IsOfContent => IsRectified || Gain != 1 || Events is not null;
}
