using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Impedance;
using ChannelAudit.Runs;
using ChannelAudit.Setup;

namespace ChannelAudit.Cli.Screening;

/// <summary>What every recording of a run is audited with.</summary>
/// <param name="Setup">What was where.</param>
/// <param name="Criteria">The limits in force.</param>
/// <param name="EventsFile">The events table, or null.</param>
/// <param name="Impedance">The readings, or null.</param>
/// <param name="WithViews">Whether pictures of channels will be drawn.</param>
internal sealed record ScreenInputs(StudySetup Setup, AuditCriteria Criteria, string? EventsFile, ImpedanceLog? Impedance, bool WithViews)
{
    /// <summary>Threads that may work on one recording; results do not depend on them.</summary>
    public int Threads { get; init; } = 1;

    /// <summary>The files that these were read from, byte for byte.</summary>
    public ImmutableArray<RunInput> Files { get; init; } = [];
}
