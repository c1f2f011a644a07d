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

    /// <summary>Information: a neighbour's muscle.</summary>
    public const string Crosstalk = "crosstalk";

    /// <summary>Information: something that all channels share alike.</summary>
    public const string CommonSource = "common-source";

    /// <summary>Information: a muscle that does not come to rest.</summary>
    public const string TonicActivity = "tonic-activity";

    /// <summary>Information: speech or chewing.</summary>
    public const string MouthActivity = "mouth-activity";

    /// <summary>Information: filters other than the file states.</summary>
    public const string FilterMismatch = "filter-mismatch";

    /// <summary>Information: events that look odd.</summary>
    public const string Events = "events";

    /// <summary>Information: a resting level that rises or falls.</summary>
    public const string RestingLevel = "resting-level";

    /// <summary>The codes that inform and never change a verdict.</summary>
    public static ImmutableArray<string> Information { get; } =
        [Crosstalk, CommonSource, TonicActivity, MouthActivity, FilterMismatch, Events, RestingLevel];

    /// <summary>All codes that can change a verdict, in the order in which equals are listed.</summary>
    public static ImmutableArray<string> All { get; } =
    [
        Bridge, Dropout, Flatline, Clipping, LineNoise, NarrowBand, LowFrequency, Pops, NoiseFloor, Drift, WeakResponse, LeadSwap,
        UnusableInput,
    ];
}
