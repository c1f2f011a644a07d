using System.Collections.Immutable;
using ChannelAudit.Synthesis;

namespace ChannelAudit.Calibration.TrialStudy;

/// <summary>Something that was put into one recording of the study.</summary>
/// <param name="Recording">Its path without extension, as in <c>P07/session1</c>.</param>
/// <param name="Sites">The sites concerned, or <c>all</c>.</param>
/// <param name="What">What it is, for the table of truths.</param>
internal sealed record Plant(string Recording, string Sites, string What)
{
    /// <summary>Faults of the signal, by the trials.</summary>
    public Func<ImmutableArray<PlannedTrial>, ImmutableArray<Fault>> Faults { get; init; } = static _ => [];

    /// <summary>What else differs in the plan, before the faults are added.</summary>
    public Func<SessionPlan, SessionPlan> Plan { get; init; } = static plan => plan;

    /// <summary>What differs in the file.</summary>
    public StoredChange Stored { get; init; } = new();

    /// <summary>The trials concerned where no fault says it.</summary>
    public string Trials { get; init; } = "all";
}
