using System.Collections.Immutable;

namespace ChannelAudit.Reports.Digests;

/// <summary>A reason counted over all recordings of a run.</summary>
/// <param name="Reason">The reason code.</param>
/// <param name="Channels">Channels whose verdict it explains.</param>
/// <param name="Trials">Trials that carry it, each counted once a channel.</param>
/// <param name="Recordings">Recordings in which it occurs.</param>
/// <param name="FirstRecording">The first recording in which it occurs.</param>
/// <param name="FirstChannel">The place of the first channel there that has it, from 0 in file order.</param>
public sealed record StudyReason(string Reason, int Channels, int Trials, int Recordings, RecordingDigest FirstRecording, int FirstChannel)
{
    /// <summary>The reasons of some recordings, that of most trials first, then that of most channels.</summary>
    /// <param name="recordings">The recordings; the order says which is the first.</param>
    public static ImmutableArray<StudyReason> Of(IEnumerable<RecordingDigest> recordings) =>
    [
        .. recordings
            .SelectMany(recording => recording.Channels.SelectMany((channel, place) => channel.ByReason
                .Select(reason => (Recording: recording, Channel: channel, Place: place, Counted: reason))))
            .GroupBy(one => one.Counted.Reason, StringComparer.Ordinal)
            .Select(group => new StudyReason(
                group.Key,
                group.Count(one => one.Channel.Reasons.Contains(group.Key, StringComparer.Ordinal)),
                group.Sum(one => one.Counted.Trials),
                group.Select(one => one.Recording.Id).Distinct(StringComparer.Ordinal).Count(),
                group.First().Recording,
                group.First().Place))
            .OrderByDescending(reason => reason.Trials)
            .ThenByDescending(reason => reason.Channels)
            .ThenBy(reason => reason.Reason, StringComparer.Ordinal),
    ];
}
