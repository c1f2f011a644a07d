using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Synthesis;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Calibration.Study;

/// <summary>One fault from nothing to gross, or one thing that resembles a fault and must pass.</summary>
public sealed record Sweep
{
    /// <summary>Its name in tables and files.</summary>
    public required string Name { get; init; }

    /// <summary>What it is, in words.</summary>
    public required string Title { get; init; }

    /// <summary>What its severity counts, with the unit.</summary>
    public required string Severity { get; init; }

    /// <summary>The severities, mildest first.</summary>
    public required ImmutableArray<double> Severities { get; init; }

    /// <summary>Reason codes that name it rightly; empty for what must pass.</summary>
    public ImmutableArray<string> Reasons { get; init; } = [];

    /// <summary>What a gross fault must come to.</summary>
    public Grade Wanted { get; init; } = Grade.Reject;

    /// <summary>Positions in <see cref="Severities"/> that count as gross.</summary>
    public ImmutableArray<int> Gross { get; init; } = [];

    /// <summary>Makes the plan of a recording.</summary>
    public required Func<Subject, double, SessionPlan> Plan { get; init; }

    /// <summary>The trials that it meets; null: as the made recording tells.</summary>
    public Func<SessionPlan, ImmutableArray<FaultyCell>>? Cells { get; init; }

    /// <summary>Changes a made recording's samples, for faults that lie behind the converter.</summary>
    public Func<Recording, double, Recording>? Alter { get; init; }

    /// <summary>The second generator's name for the same thing; null: it has none.</summary>
    public string? SecondName { get; init; }

    /// <summary>Severities for the second generator; empty: the same.</summary>
    public ImmutableArray<double> SecondSeverities { get; init; } = [];

    /// <summary>Whether it must pass.</summary>
    public bool IsConfuser => Reasons.IsEmpty;
}
