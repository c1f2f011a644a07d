using System.Collections.Immutable;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Setup;

namespace ChannelAudit.Segments;

/// <summary>The trials of a recording.</summary>
/// <param name="Source">Where they come from.</param>
/// <param name="Trials">Numbered from 1 by onset, then file order.</param>
/// <param name="Warnings">What was odd about them.</param>
public sealed record TrialSet(TrialSource Source, ImmutableArray<Trial> Trials, ImmutableArray<Warning> Warnings)
{
    /// <summary>Triggers that are no trial, since they follow another one too soon.</summary>
    public ImmutableArray<RecordedEvent> Doubles { get; init; } = [];
}
