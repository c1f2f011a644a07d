using System.Collections.Immutable;
using ChannelAudit.Text;

namespace ChannelAudit.Studies;

/// <summary>The channels that most recordings have, and recordings that have others or the same in another order.</summary>
internal static class UsualChannels
{
    private const string Look = "Look which channel is which; name sites and channels in the setup, or in one of its own for these recordings.";

    /// <summary>Names that more than half of the recordings have, in ordinal order.</summary>
    public static ImmutableArray<string> Of(ImmutableArray<StudyRecording> all) =>
    [
        .. all.SelectMany(recording => recording.Channels.Select(channel => channel.Name).Distinct(StringComparer.Ordinal))
            .GroupBy(name => name, StringComparer.Ordinal)
            .Where(group => 2 * group.Count() > all.Length)
            .Select(group => group.Key)
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>Missing and additional channels, and another order.</summary>
    public static IEnumerable<StudyFinding> Odd(ImmutableArray<StudyRecording> all, ImmutableArray<string> usual) => usual.IsEmpty
        ? [new StudyFinding(
            OddKind.Channels, [.. all.Select(recording => recording.Id)], null, "the recordings have no channel name in common, so that nothing is compared by channel", Look)]
        : [.. Sets(all, usual), .. Orders(all, usual)];

    private static IEnumerable<StudyFinding> Sets(ImmutableArray<StudyRecording> all, ImmutableArray<string> usual) => Vote.Of(
        OddKind.Channels, null, all.Select(recording => (recording.Id, SetOf(recording, usual))), Look);

    private static string SetOf(StudyRecording recording, ImmutableArray<string> usual)
    {
        string[] own = [.. recording.Channels.Select(channel => channel.Name)];
        string missing = OneLine.List(usual.Where(name => !own.Contains(name, StringComparer.Ordinal)));
        string more = OneLine.List(own.Where(name => !usual.Contains(name, StringComparer.Ordinal)).Order(StringComparer.Ordinal));
        return (missing.Length, more.Length) switch
        {
            (0, 0) => "the usual ones",
            (_, 0) => $"without {missing}",
            (0, _) => $"also {more}",
            _ => $"without {missing}, also {more}",
        };
    }

    private static IEnumerable<StudyFinding> Orders(ImmutableArray<StudyRecording> all, ImmutableArray<string> usual) => Vote.Of(
        OddKind.ChannelOrder,
        null,
        all.Where(recording => usual.All(name => recording.Find(name) is not null))
            .Select(recording => (
                recording.Id, OneLine.List(recording.Channels.Select(channel => channel.Name).Where(name => usual.Contains(name, StringComparer.Ordinal))))),
        "Read channels by label, never by position; see that the leads were where the labels say.");
}
