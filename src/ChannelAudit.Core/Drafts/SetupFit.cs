using System.Collections.Immutable;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Setup;

namespace ChannelAudit.Drafts;

/// <summary>How a setup fits a recording: every channel, every label of rest and every task that it names is there.</summary>
public sealed record SetupFit
{
    /// <summary>The recording's file name.</summary>
    public required string RecordingFile { get; init; }

    /// <summary>Its path below the folder that will be screened, as far as the patterns of the setup tell; else its name alone.</summary>
    public required string Path { get; init; }

    /// <summary>Who was recorded, by the setup or the file's BIDS name.</summary>
    public required Person Person { get; init; }

    /// <summary>What is different for it, in the order of the setup.</summary>
    public required ImmutableArray<RecordingOverride> Overrides { get; init; }

    /// <summary>Channels that are audited.</summary>
    public required int Channels { get; init; }

    /// <summary>Where the trials come from.</summary>
    public required TrialSource Source { get; init; }

    /// <summary>How many trials there are.</summary>
    public required int Trials { get; init; }

    /// <summary>The labels that the setup names: rest first, then the tasks in the order of the sites.</summary>
    public required ImmutableArray<LabelFit> Labels { get; init; }

    /// <summary>Holds a setup against a recording, without looking at its samples.</summary>
    /// <param name="setup">The setup.</param>
    /// <param name="path">The recording.</param>
    /// <exception cref="ChannelAuditException">When the recording cannot be read, or lacks something that the setup names.</exception>
    public static SetupFit Of(StudySetup setup, string path)
    {
        string below = PathBelow(setup, path);
        Person person = Person.Of(setup, below, participant => BidsParticipants.GroupOf(path, participant));
        ImmutableArray<RecordingOverride> overrides = [.. setup.Overrides.Where(one => one.IsAbout(below))];
        setup = setup.For(below);
        RecordingCompanions companions = BidsCompanions.Find(path);
        using Recording recording = companions.ApplyTo(RecordingOpener.Open(path, new ReadOptions(setup.Recording.SamplingHz, setup.Recording.Unit)));
        ImmutableArray<(Channel Channel, string Name)> audited = AuditedChannels.Of(recording, setup);
        RefuseUnaudited(setup, recording, audited);
        TrialEvents events = TrialSources.Choose(recording, setup, null, companions);
        TrialSet trials = TrialPlan.Of(recording, events, setup);
        IEnumerable<LabelFit> rest = setup.Trials.Rest.Select(label => Find(setup, "[trials] rest", "rest", label, events, trials));
        IEnumerable<LabelFit> tasks = setup.Sites.Where(site => site.Task is not null)
            .Select(site => Find(setup, $"site '{site.Name}', task", site.Name, site.Task!, events, trials));
        return new SetupFit
        {
            RecordingFile = recording.FileName,
            Path = below,
            Person = person,
            Overrides = overrides,
            Channels = audited.Length,
            Source = trials.Source,
            Trials = trials.Trials.Length,
            Labels = [.. rest, .. tasks],
        };
    }

    // Which folder will be screened is not known here: the end of the path that most tables are about is taken, the shortest of them.
    private static string PathBelow(StudySetup setup, string path)
    {
        string[] names = System.IO.Path.GetFullPath(path).Split(System.IO.Path.DirectorySeparatorChar);
        return Enumerable.Range(1, names.Length)
            .Select(count => string.Join('/', names[^count..]))
            .MaxBy(end => setup.Overrides.Count(one => one.IsAbout(end)) + (setup.ParticipantPath?.Fits(end) == true ? 1 : 0))!;
    }

    private static void RefuseUnaudited(StudySetup setup, Recording recording, ImmutableArray<(Channel Channel, string Name)> audited)
    {
        ImmutableArray<int> positions = SiteChannels.Locate(setup, recording.Channels.Select(channel => channel.RawLabel), recording.FileName);
        foreach ((SiteSetup site, int position) in setup.Sites.Zip(positions))
        {
            if (audited.All(one => one.Channel.Index != position))
            {
                throw SetupErrors.SiteNotAudited(setup, site, recording.FileName, recording.Channels[position].NotAudited ?? "no samples");
            }
        }
    }

    private static LabelFit Find(StudySetup setup, string place, string of, string label, TrialEvents events, TrialSet trials)
    {
        int count = trials.Trials.Count(trial => string.Equals(trial.Label, label, StringComparison.Ordinal));
        if (count > 0)
        {
            return new LabelFit(of, label, count);
        }

        throw events.Events.Any(one => string.Equals(one.Label?.Trim(), label, StringComparison.Ordinal))
            ? SetupErrors.LabelWithoutDuration(setup, place, label, events.File)
            : SetupErrors.NoSuchLabel(setup, place, label, events.File, LabelsOf(trials));
    }

    private static string[] LabelsOf(TrialSet trials) => [.. trials.Trials.Select(trial => trial.Label).OfType<string>().Distinct(StringComparer.Ordinal)];
}
