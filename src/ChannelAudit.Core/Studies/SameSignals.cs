using System.Collections.Immutable;
using System.Globalization;

namespace ChannelAudit.Studies;

/// <summary>One file, or one signal, under two ids.</summary>
/// <remarks>
/// Fingerprints are held against one another second by second; at least half of the seconds that both have, and eight, must agree. Groups of four seconds find the
/// candidates, so that the time does not grow with the square of the recordings.
/// </remarks>
internal static class SameSignals
{
    private const int Digits = 4;
    private const int GroupDigits = 4 * Digits;
    private const int FewestSeconds = 8;
    private const double SameLevel = 1.01;

    /// <summary>Recordings that hold what an earlier one holds; each is said with the first of its kind.</summary>
    public static IEnumerable<StudyFinding> In(ImmutableArray<StudyRecording> all)
    {
        Dictionary<string, string> files = new(StringComparer.Ordinal);
        Dictionary<string, List<(StudyRecording Recording, StudyChannel Channel)>> groups = new(StringComparer.Ordinal);
        foreach (StudyRecording recording in all)
        {
            if (recording.Sha256.Length > 0 && !files.TryAdd(recording.Sha256, recording.Id))
            {
                yield return new StudyFinding(
                    OddKind.SameFile, [files[recording.Sha256], recording.Id], null, "the two files are the same, byte by byte",
                    "Find out whose recording it is, and take the other one out: it counts twice.");
                continue;
            }

            foreach (StudyFinding found in Earlier(recording, groups))
            {
                yield return found;
            }

            foreach (StudyChannel channel in recording.Channels)
            {
                foreach (string key in Keys(channel))
                {
                    groups.TryAdd(key, []);
                    groups[key].Add((recording, channel));
                }
            }
        }
    }

    private static IEnumerable<StudyFinding> Earlier(StudyRecording recording, Dictionary<string, List<(StudyRecording Recording, StudyChannel Channel)>> groups)
    {
        List<(StudyRecording Other, StudyChannel OtherChannel, StudyChannel Own)> same = [];
        foreach (StudyChannel own in recording.Channels)
        {
            (StudyRecording Recording, StudyChannel Channel)[] alike =
            [
                .. Keys(own).SelectMany(key => groups.GetValueOrDefault(key) ?? []).Distinct()
                    .Where(other => AreSame(own.Signal!.Print, other.Channel.Signal!.Print))
                    .OrderBy(other => other.Recording.Id, StringComparer.Ordinal)
                    .ThenBy(other => string.Equals(other.Channel.Name, own.Name, StringComparison.Ordinal) ? 0 : 1),
            ];
            if (alike.Length > 0)
            {
                same.Add((alike[0].Recording, alike[0].Channel, own));
            }
        }

        foreach (var withOne in same.GroupBy(one => one.Other.Id, StringComparer.Ordinal))
        {
            (StudyRecording Other, StudyChannel OtherChannel, StudyChannel Own)[] channels = [.. withOne];
            bool isWhole = channels.Length == recording.Channels.Length;
            yield return new StudyFinding(
                OddKind.SameSignal,
                [withOne.Key, recording.Id],
                isWhole || channels.Length > 1 ? null : channels[0].Own.Name,
                $"both hold the same signal{(isWhole ? string.Empty : string.Create(CultureInfo.InvariantCulture, $" in {channels.Length} of the second's {recording.Channels.Length} channels"))}: "
                    + string.Join(", ", channels.Select(one => Words(one.OtherChannel, one.Own)))
                    + "; which is the copy the signals do not say",
                "Find out whose recording it is, and take the other one out: it counts twice, or one file was written over another.");
        }
    }

    private static string Words(StudyChannel other, StudyChannel own)
    {
        string names = string.Equals(other.Name, own.Name, StringComparison.Ordinal) ? own.Name : $"{other.Name} of the first is {own.Name} of the second";
        double ratio = own.Signal is { LevelMiddle: > 0 and var mine } && other.Signal is { LevelMiddle: > 0 and var theirs } ? mine / theirs : 1;
        return ratio is < SameLevel and > 1 / SameLevel ? names : string.Create(CultureInfo.InvariantCulture, $"{names}, in the second {ratio:G3} times as large");
    }

    private static IEnumerable<string> Keys(StudyChannel channel)
    {
        string print = channel.Signal?.Print ?? string.Empty;
        for (int start = 0; start + GroupDigits <= print.Length; start += GroupDigits)
        {
            // With the place, and with the rate: at another one the same digits are chance.
            yield return string.Create(CultureInfo.InvariantCulture, $"{start}:{print.AsSpan(start, GroupDigits)}:{channel.RateHz:R}");
        }
    }

    private static bool AreSame(string a, string b)
    {
        int seconds = Math.Min(a.Length, b.Length) / Digits;
        int equal = Enumerable.Range(0, seconds).Count(i => a.AsSpan(i * Digits, Digits).SequenceEqual(b.AsSpan(i * Digits, Digits)));
        return equal >= FewestSeconds && 2 * equal >= seconds;
    }
}
