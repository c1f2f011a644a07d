using System.Collections.Immutable;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Setup;

namespace ChannelAudit.Segments;

/// <summary>The events that trials are made of, and where they come from.</summary>
/// <param name="Source">Where they come from.</param>
/// <param name="File">The file that holds them, for messages.</param>
/// <param name="Events">The events in file order.</param>
/// <param name="Warnings">What was odd about the choice or the file.</param>
public sealed record TrialEvents(TrialSource Source, string File, ImmutableArray<RecordedEvent> Events, ImmutableArray<Warning> Warnings)
{
    /// <summary>Triggers that are no event of their own, since they follow another one too soon.</summary>
    public ImmutableArray<RecordedEvent> Doubles { get; init; } = [];
}
