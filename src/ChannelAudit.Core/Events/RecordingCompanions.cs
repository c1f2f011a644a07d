using System.Collections.Immutable;
using ChannelAudit.Recordings;

namespace ChannelAudit.Events;

/// <summary>What stands beside a recording.</summary>
public sealed record RecordingCompanions
{
    /// <summary>No companions.</summary>
    public static RecordingCompanions None { get; } = new();

    /// <summary>The events table, or null.</summary>
    public string? EventsPath { get; init; }

    /// <summary>The channels table, or null.</summary>
    public string? ChannelsPath { get; init; }

    /// <summary>The nearest sidecar, or null.</summary>
    public string? SidecarPath { get; init; }

    /// <summary>The rows of the channels table.</summary>
    public ImmutableArray<BidsChannel> Channels { get; init; } = [];

    /// <summary>Mains frequency in Hz, or null when not stated.</summary>
    public double? PowerLineHz { get; init; }

    /// <summary>Samples per second as the sidecar states them, or null.</summary>
    public double? SamplingHz { get; init; }

    /// <summary>Names of the filters that were applied after digitising (<c>SoftwareFilters</c>), or null when none is stated.</summary>
    public string? SoftwareFilters { get; init; }

    /// <summary>What was odd about them.</summary>
    public ImmutableArray<Warning> Warnings { get; init; } = [];

    /// <summary>Joins what the companions say to what the recording says; where they differ, the recording wins and a warning says so.</summary>
    /// <param name="recording">The recording; the one returned shares its samples, so only one of the two is disposed.</param>
    /// <returns>The recording with channels of a type other than EMG not audited, filters completed where the file states none, and the warnings added.</returns>
    public Recording ApplyTo(Recording recording) => CompanionRules.Apply(this, recording);
}
