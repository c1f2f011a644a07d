using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using ChannelAudit.Results;

namespace ChannelAudit.Studies;

/// <summary>Recordings whose trials have the same onsets, to the millisecond, and the same labels as another's: the events of one may have got to the other.</summary>
/// <remarks>
/// Only where more than half of the recordings have times of their own: in a study whose recording starts with the stimulus program all may share them, and then it says nothing. Ten trials
/// at least; blocks of time are no events.
/// </remarks>
internal static class SameEvents
{
    private const int FewestTrials = 10;

    /// <summary>One finding for each list that several recordings share; those that are known to hold one signal count once.</summary>
    /// <param name="all">The recordings by id.</param>
    /// <param name="same">Which of them hold one file or one signal.</param>
    public static IEnumerable<StudyFinding> In(ImmutableArray<StudyRecording> all, ImmutableArray<StudyFinding> same)
    {
        HashSet<string> copies = [.. same.SelectMany(one => one.Recordings.Skip(1))];
        StudyRecording[] own = [.. all.Where(recording => recording.EventsKey is not null && !copies.Contains(recording.Id))];
        IGrouping<string, StudyRecording>[] lists = [.. own.GroupBy(recording => recording.EventsKey!, StringComparer.Ordinal)];
        return 2 * lists.Count(list => list.Count() == 1) <= own.Length
            ? []
            : lists.Where(list => list.Count() > 1).Select(list => new StudyFinding(
                OddKind.SameEvents,
                [.. list.Select(recording => recording.Id)],
                null,
                string.Create(CultureInfo.InvariantCulture, $"{list.First().Trials} trials with the same onsets, to the millisecond, and the same labels, where most recordings have times of their own"),
                "Compare with the logs of both sessions: with the events of another session trials are cut at the wrong places, and verdicts and scores mean nothing."));
    }

    /// <summary>The hash of onsets and labels; null for few trials and for blocks of time.</summary>
    public static string? KeyOf(RecordingResult result)
    {
        if (result.Trials.Length < FewestTrials || string.Equals(result.TrialsFrom, "blocks", StringComparison.Ordinal))
        {
            return null;
        }

        StringBuilder text = new();
        foreach (Segments.Trial trial in result.Trials)
        {
            text.Append(CultureInfo.InvariantCulture, $"{Math.Round(trial.OnsetS * 1000)} {trial.Label?.Length ?? -1} {trial.Label}\n");
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }
}
