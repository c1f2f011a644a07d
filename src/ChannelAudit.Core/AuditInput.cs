using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Setup;

namespace ChannelAudit;

/// <summary>Everything an audit of one recording needs beside its samples.</summary>
public sealed record AuditInput
{
    /// <summary>The recording's id in tables.</summary>
    public required string Id { get; init; }

    /// <summary>Path relative to the given root.</summary>
    public required string Path { get; init; }

    /// <summary>SHA-256 of the file.</summary>
    public required string Sha256 { get; init; }

    /// <summary>Limits in force.</summary>
    public required AuditCriteria Criteria { get; init; }

    /// <summary>What was where.</summary>
    public StudySetup Setup { get; init; } = StudySetup.Empty;

    /// <summary>Who was recorded.</summary>
    public Person Person { get; init; } = new(null, null);

    /// <summary>The trials, by number.</summary>
    public required ImmutableArray<Trial> Trials { get; init; }

    /// <summary>Where they came from, in words.</summary>
    public required string TrialsFrom { get; init; }

    /// <summary>Triggers that are no trial, since they follow another one too soon.</summary>
    public ImmutableArray<RecordedEvent> Doubles { get; init; } = [];

    /// <summary>Whether channels get their <see cref="Results.ChannelResult.View"/>: pictures will be drawn.</summary>
    public bool WithViews { get; init; }

    /// <summary>Whether it is counted what verdicts would be by other limits: <see cref="Results.RecordingResult.Sensitivity"/>.</summary>
    public bool WithSensitivity { get; init; } = true;

    /// <summary>Warnings from events and companions, beside the recording's own.</summary>
    public ImmutableArray<Warning> Warnings { get; init; } = [];
}
