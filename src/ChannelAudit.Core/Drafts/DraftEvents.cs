using System.Collections.Immutable;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Setup;

namespace ChannelAudit.Drafts;

/// <summary>The events of a recording that may become trials, by label.</summary>
public sealed record DraftEvents
{
    /// <summary>Where they come from; blocks when there is no event.</summary>
    public required TrialSource Source { get; init; }

    /// <summary>The file that holds them.</summary>
    public required string File { get; init; }

    /// <summary>How many there are, those without a label included.</summary>
    public required int Count { get; init; }

    /// <summary>How many of them become trials when a setup says nothing more.</summary>
    public required int Trials { get; init; }

    /// <summary>The labels in order of their first event.</summary>
    public required ImmutableArray<LabelCount> Labels { get; init; }

    /// <summary>Finds them as an audit without a setup does; where that makes blocks, the instants that it passed over.</summary>
    /// <exception cref="ChannelAuditException">When an events table beside the recording cannot be read.</exception>
    internal static DraftEvents Of(Recording recording, RecordingCompanions companions)
    {
        TrialEvents chosen = TrialSources.Choose(recording, StudySetup.Empty, null, companions);
        TrialEvents events = chosen.Source == TrialSource.Blocks ? PassedOver(recording, companions) ?? chosen : chosen;
        bool hasNone = events.Source == TrialSource.Blocks;
        return new DraftEvents
        {
            Source = events.Source,
            File = events.File,
            Count = hasNone ? 0 : events.Events.Length,
            Trials = hasNone ? 0 : events.Events.Count(one => TrialPlan.IsTrial(one, new TrialSetup())),
            Labels = hasNone ? [] : Tally(events.Events),
        };
    }

    private static TrialEvents? PassedOver(Recording recording, RecordingCompanions companions)
    {
        TrialSource? source = companions.EventsPath is not null ? TrialSource.Events : recording.Annotations.IsEmpty ? null : TrialSource.Annotations;
        if (source is null)
        {
            return null;
        }

        TrialEvents events = TrialSources.Choose(recording, new StudySetup { Trials = new TrialSetup { From = source } }, null, companions);
        return events.Events.IsEmpty ? null : events;
    }

    private static ImmutableArray<LabelCount> Tally(ImmutableArray<RecordedEvent> events) =>
    [
        .. events.Where(one => !string.IsNullOrWhiteSpace(one.Label))
            .GroupBy(one => one.Label!.Trim(), StringComparer.Ordinal)
            .Select(group => new LabelCount(group.Key, group.Count(), group.Min(one => one.DurationS ?? 0), group.Max(one => one.DurationS ?? 0))),
    ];
}
