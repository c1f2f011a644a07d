using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Fairness;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Results;
using ChannelAudit.Studies;

namespace ChannelAudit.Reports.Digests;

/// <summary>A whole run in memory: a digest of every recording, and the few recordings that are shown in full.</summary>
public sealed record RunDigest
{
    /// <summary>Recordings by id, ordinal order.</summary>
    public required ImmutableArray<RecordingDigest> Recordings { get; init; }

    /// <summary>The worst recordings in full but for the numbers of their trials, worst first; of a run over one, that one.</summary>
    public required ImmutableArray<RecordingResult> Detailed { get; init; }

    /// <summary>Every code that occurs, of reasons and of information; empty of a run that was written before.</summary>
    public required ImmutableHashSet<string> Codes { get; init; }

    /// <summary>Recordings that are other than the rest; changes no verdict.</summary>
    public ImmutableArray<StudyFinding> Odd { get; init; } = [];

    /// <summary>The decisions of persons in short; null when there are none.</summary>
    public DecisionsDigest? Decisions { get; init; }

    /// <summary>Whether exclusions are even over conditions, groups and channels; null of a run that was written before.</summary>
    public FairnessReport? Fairness { get; init; }

    /// <summary>Recordings that could not be read.</summary>
    public ImmutableArray<UnreadRecording> Unread { get; init; } = [];

    /// <summary>Channels by final verdict.</summary>
    public VerdictCounts Channels => VerdictCounts.Sum(Recordings.Select(recording => recording.ChannelCounts));

    /// <summary>Trials by final verdict, each counted once a channel.</summary>
    public VerdictCounts Trials => VerdictCounts.Sum(Recordings.Select(recording => recording.TrialCounts));

    /// <summary>Channels by computed verdict.</summary>
    public VerdictCounts ComputedChannels => VerdictCounts.Of(Recordings.SelectMany(recording => recording.Channels.Select(channel => channel.Computed)));

    /// <summary>Trials by computed verdict, each counted once a channel.</summary>
    public VerdictCounts ComputedTrials => VerdictCounts.Sum(Recordings.SelectMany(recording => recording.Channels.Select(channel => channel.ComputedTrials)));

    /// <summary>What was odd about the files.</summary>
    public IEnumerable<(string Recording, Warning Warning)> Warnings =>
        Recordings.SelectMany(recording => recording.Warnings.Select(warning => (recording.Id, warning)));

    /// <summary>The digest of a run that was written before.</summary>
    /// <param name="recordings">Its recordings.</param>
    /// <param name="odd">Those that are other than the rest.</param>
    /// <param name="read">Reads one in full; asked for the few that are shown so.</param>
    public static RunDigest Of(ImmutableArray<RecordingDigest> recordings, ImmutableArray<StudyFinding> odd, Func<string, RecordingResult> read) => new()
    {
        Recordings = [.. recordings.OrderBy(recording => recording.Id, StringComparer.Ordinal)],
        Detailed = [.. RunCollector.ShownInFull(recordings, recordings.Length == 1).Select(recording => read(recording.Id))],
        Codes = [],
        Odd = odd,
    };

    /// <summary>The digest of results that are all in memory.</summary>
    public static RunDigest Of(params IEnumerable<RecordingResult> recordings)
    {
        RunCollector collector = new();
        foreach (RecordingResult recording in recordings)
        {
            collector.Add(recording, RecordingStamp.None);
        }

        return collector.Digest([]);
    }
}
