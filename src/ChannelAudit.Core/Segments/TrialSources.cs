using System.Collections.Immutable;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Setup;

namespace ChannelAudit.Segments;

/// <summary>Chooses where trials come from.</summary>
/// <remarks>
/// The setup's <c>[trials] from</c> decides. Without it: an events table given on the command line; else the first of the events table beside the recording, its
/// annotations and blocks of 10 s that yields a trial, that is, has an event with a duration, or any event when a scoring window is set.
/// </remarks>
public static class TrialSources
{
    /// <summary>Chooses.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="setup">The study's setup.</param>
    /// <param name="eventsFile">An events table given by name, or null.</param>
    /// <param name="companions">What stands beside the recording.</param>
    /// <exception cref="ChannelAuditException">When the source that was asked for is not there or cannot be read; usage fault.</exception>
    public static TrialEvents Choose(Recording recording, StudySetup setup, string? eventsFile, RecordingCompanions companions)
    {
        TrialSource? asked = setup.Trials.From;
        if (eventsFile is not null && asked is { } other and not TrialSource.Events)
        {
            throw TrialErrors.TwoSources(setup.FileName, other, Path.GetFileName(eventsFile));
        }

        return asked switch
        {
            TrialSource.Events => FromTable(eventsFile ?? companions.EventsPath ?? throw TrialErrors.NoTable(recording.FileName)),
            TrialSource.Annotations => FromAnnotations(recording),
            TrialSource.Trigger => FromTrigger(recording, setup),
            TrialSource.Blocks => FromBlocks(recording, []),
            _ => eventsFile is null ? FirstThatYields(recording, setup, companions) : FromTable(eventsFile),
        };
    }

    private static TrialEvents FirstThatYields(Recording recording, StudySetup setup, RecordingCompanions companions)
    {
        ImmutableArray<Warning> passedOver = [];
        if (companions.EventsPath is { } path)
        {
            TrialEvents table = FromTable(path);
            if (Yields(table, setup))
            {
                return table;
            }

            passedOver = [.. table.Warnings, TrialPlan.NoDuration(table)];
        }

        TrialEvents annotations = FromAnnotations(recording);
        if (Yields(annotations, setup))
        {
            return annotations with { Warnings = passedOver };
        }

        return FromBlocks(recording, annotations.Events.IsEmpty ? passedOver : [.. passedOver, TrialPlan.NoDuration(annotations)]);
    }

    private static bool Yields(TrialEvents source, StudySetup setup) => source.Events.Any(one => TrialPlan.IsTrial(one, setup.Trials));

    private static TrialEvents FromTable(string path)
    {
        ImmutableArray<RecordedEvent> events = EventsTable.Read(path, out ImmutableArray<Warning> warnings);
        return new TrialEvents(TrialSource.Events, Path.GetFileName(path), events, warnings);
    }

    private static TrialEvents FromAnnotations(Recording recording) => new(
        TrialSource.Annotations,
        recording.FileName,
        [.. recording.Annotations.Select(note => new RecordedEvent(note.OnsetS, note.DurationS, note.Text.Length == 0 ? null : note.Text))],
        []);

    private static TrialEvents FromTrigger(Recording recording, StudySetup setup)
    {
        TriggerSetup rules = setup.Trials.Trigger;
        Channel channel = rules.Channel is { } label
            ? Named(recording, setup, label)
            : recording.Channels.FirstOrDefault(IsTrigger) ?? throw TrialErrors.NoTrigger(recording.FileName);
        return TriggerChannel.Read(recording, channel.Index, rules);
    }

    private static Channel Named(Recording recording, StudySetup setup, string label)
    {
        string[] names = [.. SiteChannels.Names(recording.Channels.Select(channel => channel.RawLabel))];
        int place = Array.IndexOf(names, label);
        return place >= 0 && !recording.Channels[place].Stretches.IsEmpty
            ? recording.Channels[place]
            : throw TrialErrors.NoSuchTrigger(setup.FileName, recording.FileName, label, names);
    }

    private static TrialEvents FromBlocks(Recording recording, ImmutableArray<Warning> warnings) =>
        new(TrialSource.Blocks, recording.FileName, Blocks.Of(recording.DurationS), warnings);

    // Readers and companions say why a channel is not audited; a trigger's label or that reason names it.
    private static bool IsTrigger(Channel channel)
    {
        string[] words = ["trig", "status", "marker", "stim", "ttl", "event"];
        string text = channel.Label + " " + channel.NotAudited;
        return channel.NotAudited is not null && !channel.Stretches.IsEmpty && words.Any(word => text.Contains(word, StringComparison.OrdinalIgnoreCase));
    }
}
