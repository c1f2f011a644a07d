using System.Collections.Immutable;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Setup;

namespace ChannelAudit.Pilot;

/// <summary>What a pilot had to go by.</summary>
internal sealed record PilotMaterial
{
    /// <summary>The audit of what comes before the taps.</summary>
    public required RecordingResult Recording { get; init; }

    /// <summary>What was where.</summary>
    public required StudySetup Setup { get; init; }

    /// <summary>The sites in file order.</summary>
    public required ImmutableArray<PilotSite> Sites { get; init; }

    /// <summary>The events that speak of taps.</summary>
    public required TapEvents Taps { get; init; }

    /// <summary>What the taps showed; null when there were none.</summary>
    public TapReport? Tapped { get; init; }

    /// <summary>Where the audit ends before the taps, in seconds; null when it does not.</summary>
    public decimal? EndS { get; init; }

    /// <summary>Trials that the recording ends before.</summary>
    public ImmutableArray<Trial> Cut { get; init; } = [];

    /// <summary>The recordings that a table of readings names, when this one is not among them; empty otherwise.</summary>
    public ImmutableArray<string> ReadingsOfOthers { get; init; } = [];
}
