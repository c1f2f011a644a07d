using System.Collections.Immutable;
using ChannelAudit.Results;

namespace ChannelAudit.Studies;

/// <summary>Names the recordings of a study that are other than the rest: rate, filter, gain, unit, length, channels, polarity, or one signal or one list of events under two ids.</summary>
/// <remarks>
/// Takes the results one by one, in any order, and keeps a few numbers of each; what is found depends on the results alone. From three recordings on; one signal
/// under two ids from two. No message is a verdict: docs/study.md says what each rests on. Not for several threads at once.
/// </remarks>
public sealed class OddRecordings
{
    /// <summary>Recordings without which there is no rest to be other than.</summary>
    public const int FewestRecordings = 3;

    private readonly List<StudyRecording> recordings = [];

    /// <summary>Adds a recording.</summary>
    public void Add(RecordingResult result) => recordings.Add(StudyRecording.Of(result));

    /// <summary>What was found, by kind, channel and recording.</summary>
    public ImmutableArray<StudyFinding> Found()
    {
        ImmutableArray<StudyRecording> all = [.. recordings.OrderBy(recording => recording.Id, StringComparer.Ordinal)];
        ImmutableArray<StudyFinding> same = [.. SameSignals.In(all)];
        IEnumerable<StudyFinding> found = same;
        if (all.Length >= FewestRecordings)
        {
            ImmutableArray<string> usual = UsualChannels.Of(all);
            found = found.Concat(SameEvents.In(all, same)).Concat(OddLengths.In(all)).Concat(OddHeaders.In(all, usual)).Concat(OddLevels.In(all, usual)).Concat(OddSpectra.In(all, usual))
                .Concat(OddPolarity.In(all, usual)).Concat(UsualChannels.Odd(all, usual));
        }

        return
        [
            .. found.OrderBy(one => OddKind.All.IndexOf(one.Kind)).ThenBy(one => one.Channel, StringComparer.Ordinal)
                .ThenBy(one => one.Recordings.FirstOrDefault(), StringComparer.Ordinal).ThenBy(one => one.Text, StringComparer.Ordinal),
        ];
    }
}
