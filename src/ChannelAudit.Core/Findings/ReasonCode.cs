using System.Collections.Immutable;

namespace ChannelAudit.Findings;

/// <summary>The codes of findings: words, stable for ever.</summary>
public static class ReasonCode
{
    /// <summary>Mains and its harmonics.</summary>
    public const string LineNoise = "line-noise";

    /// <summary>Any other steady narrow peak.</summary>
    public const string NarrowBand = "narrow-band";

    /// <summary>Joined sites, or channels that are identical.</summary>
    public const string Bridge = "bridge";

    /// <summary>The amplifier or the file at its limit.</summary>
    public const string Clipping = "clipping";

    /// <summary>No signal at all.</summary>
    public const string Flatline = "flatline";

    /// <summary>Samples that are not there.</summary>
    public const string Dropout = "dropout";

    /// <summary>A wandering baseline, or too little room to the rails.</summary>
    public const string Drift = "drift";

    /// <summary>Motion and other power below the band.</summary>
    public const string LowFrequency = "low-frequency";

    /// <summary>Short, isolated spikes.</summary>
    public const string Pops = "pops";

    /// <summary>Broadband noise at rest.</summary>
    public const string NoiseFloor = "noise-floor";

    /// <summary>No answer to the task.</summary>
    public const string WeakResponse = "weak-response";

    /// <summary>Another site answers the task.</summary>
    public const string LeadSwap = "lead-swap";

    /// <summary>Input that cannot be judged.</summary>
    public const string UnusableInput = "unusable-input";

    /// <summary>All codes that can change a verdict, in the order in which equals are listed.</summary>
    public static ImmutableArray<string> All { get; } =
    [
        Bridge, Dropout, Flatline, Clipping, LineNoise, NarrowBand, LowFrequency, Pops, NoiseFloor, Drift, WeakResponse, LeadSwap,
        UnusableInput,
    ];
}
