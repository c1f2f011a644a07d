using ChannelAudit.Criteria;
using ChannelAudit.Events;
using ChannelAudit.Impedance;
using ChannelAudit.Recordings;
using ChannelAudit.Runs;
using ChannelAudit.Segments;
using ChannelAudit.Setup;

namespace ChannelAudit;

/// <summary>A file on disk opened for an audit: what stands beside it is found, and the trials are chosen.</summary>
/// <remarks>Dispose it to close the file.</remarks>
internal sealed class PreparedRecording : IDisposable
{
    private PreparedRecording(RecordingEntry entry, Recording recording, StudySetup setup, TrialEvents events, TrialSet trials)
    {
        Entry = entry;
        Recording = recording;
        Setup = setup;
        Events = events;
        Trials = trials;
    }

    /// <summary>The file and its id.</summary>
    public RecordingEntry Entry { get; }

    /// <summary>The opened recording.</summary>
    public Recording Recording { get; }

    /// <summary>The setup, with what the companions of the file add to it.</summary>
    public StudySetup Setup { get; }

    /// <summary>Who was recorded.</summary>
    public Person Person { get; private init; } = new(null, null);

    /// <summary>The events that trials are made of.</summary>
    public TrialEvents Events { get; }

    /// <summary>The trials.</summary>
    public TrialSet Trials { get; }

    /// <summary>Opens a file.</summary>
    /// <param name="entry">The file and its id.</param>
    /// <param name="setup">What was where.</param>
    /// <param name="eventsFile">An events table given by name, or null.</param>
    /// <param name="isGrowing">Whether the file is still being written.</param>
    /// <exception cref="ChannelAuditException">When the file cannot be read, or setup or events do not fit it.</exception>
    public static PreparedRecording Open(RecordingEntry entry, StudySetup setup, string? eventsFile, bool isGrowing = false)
    {
        Person person = Person.Of(setup, entry.RelativePath, participant => BidsParticipants.GroupOf(entry.FilePath, participant));
        setup = setup.For(entry.RelativePath);
        RecordingCompanions companions = BidsCompanions.Find(entry.FilePath);
        Recording recording =
            companions.ApplyTo(RecordingOpener.Open(entry.FilePath, new ReadOptions(setup.Recording.SamplingHz, setup.Recording.Unit, IsGrowing: isGrowing)));
        try
        {
            StudySetup own = setup.Recording.MainsHz is null && companions.PowerLineHz is { } mains
                ? setup with { Recording = setup.Recording with { MainsHz = mains } }
                : setup;
            TrialEvents events = TrialSources.Choose(recording, own, eventsFile, companions);
            return new PreparedRecording(entry, recording, own, events, TrialPlan.Of(recording, events, own)) { Person = person };
        }
        catch
        {
            recording.Dispose();
            throw;
        }
    }

    /// <summary>What an audit of it needs beside its samples.</summary>
    /// <param name="criteria">Limits in force.</param>
    /// <param name="withViews">Whether pictures of channels will be drawn.</param>
    /// <param name="sha256">The SHA-256 of the file's bytes, where it is known.</param>
    public AuditInput Input(AuditCriteria criteria, bool withViews, string? sha256 = null) => new()
    {
        Id = Entry.Id,
        Path = Entry.RelativePath,
        Sha256 = sha256 ?? InputKey.HashOf(Entry.FilePath),
        Criteria = criteria,
        Person = Person,
        Setup = Setup,
        Trials = Trials.Trials,
        TrialsFrom = Trials.Source switch
        {
            TrialSource.Annotations => "annotations",
            TrialSource.Events => "events",
            TrialSource.Trigger => "trigger",
            _ => "blocks",
        },
        Doubles = Trials.Doubles,
        WithViews = withViews,
        Warnings = Trials.Warnings,
    };

    /// <summary>What readings say of this recording's electrodes; null when there are none.</summary>
    /// <param name="log">Readings of this recording, and maybe of others, or null.</param>
    /// <exception cref="ChannelAuditException">When they do not fit the recording.</exception>
    public ImpedanceReport? Readings(ImpedanceLog? log) => log is null
        ? null
        : SiteReadings.Of(log.For(Entry.Id), Setup, AuditedChannels.Of(Recording, Setup).Select(pair => pair.Name), Entry.Id);

    /// <inheritdoc/>
    public void Dispose() => Recording.Dispose();
}
