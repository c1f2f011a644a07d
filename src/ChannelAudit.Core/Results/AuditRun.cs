using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Impedance;
using ChannelAudit.Recordings;
using ChannelAudit.Runs;
using ChannelAudit.Setup;

namespace ChannelAudit.Results;

/// <summary>With what one or several recordings were audited.</summary>
public sealed record AuditRun
{
    /// <summary>The version of the program.</summary>
    public required string Version { get; init; }

    /// <summary>Limits in force.</summary>
    public required AuditCriteria Criteria { get; init; }

    /// <summary>The setup used.</summary>
    public required StudySetup Setup { get; init; }

    /// <summary>The impedance readings used, or null when none were given.</summary>
    public ImpedanceLog? Impedance { get; init; }

    /// <summary>The files of criteria, setup, readings and events, byte for byte, for whoever makes the run again.</summary>
    public ImmutableArray<RunInput> Inputs { get; init; } = [];

    /// <summary>Warnings that belong to no single recording.</summary>
    public ImmutableArray<Warning> Warnings { get; init; } = [];
}
