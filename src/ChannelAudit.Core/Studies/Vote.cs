using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Text;

namespace ChannelAudit.Studies;

/// <summary>What most recordings have, and those that have something else.</summary>
/// <remarks>Without a value of more than half of them, or where another one has a third and two recordings at least, nobody is odd: there are groups.</remarks>
internal static class Vote
{
    private const int MostValues = 5;

    /// <summary>The findings; empty when all have the same, or fewer than three say anything.</summary>
    /// <param name="kind">The kind of finding.</param>
    /// <param name="channel">The channel, or null.</param>
    /// <param name="values">The value of each recording that has one.</param>
    /// <param name="toDo">What to do about an odd one.</param>
    public static IEnumerable<StudyFinding> Of(string kind, string? channel, IEnumerable<(string Recording, string Value)> values, string toDo)
    {
        (string Value, string[] Recordings)[] groups =
        [
            .. values.GroupBy(one => one.Value, one => one.Recording, StringComparer.Ordinal)
                .Select(group => (group.Key, group.Order(StringComparer.Ordinal).ToArray()))
                .OrderByDescending(group => group.Item2.Length).ThenBy(group => group.Key, StringComparer.Ordinal),
        ];
        int total = groups.Sum(group => group.Recordings.Length);
        if (groups.Length < 2 || total < OddRecordings.FewestRecordings)
        {
            yield break;
        }

        int most = groups[0].Recordings.Length;
        int next = groups[1].Recordings.Length;
        if (2 * most <= total || (next >= 2 && 3 * next >= total))
        {
            string listed = string.Join("; ", groups.Take(MostValues).Select(group =>
                string.Create(CultureInfo.InvariantCulture, $"{OneLine.Of(group.Value)} ({group.Recordings.Length} of {total})")));
            yield return new StudyFinding(
                kind,
                [.. groups.Skip(1).SelectMany(group => group.Recordings).Order(StringComparer.Ordinal)],
                channel,
                $"{(groups.Length == 2 ? "two groups" : "several groups")}, {listed}"
                    + $"{(groups.Length > MostValues ? "; and others" : string.Empty)}; named are those outside the first",
                Groups);
            yield break;
        }

        foreach ((string value, string[] odd) in groups.Skip(1))
        {
            yield return new StudyFinding(
                kind,
                [.. odd],
                channel,
                string.Create(CultureInfo.InvariantCulture, $"{OneLine.Of(value)}, where {most} of {total} recordings have {OneLine.Of(groups[0].Value)}"),
                toDo);
        }
    }

    /// <summary>What to do about groups.</summary>
    public static string Groups => "See whether the groups go with participants, conditions or dates: "
        + "what differs between them may then be the equipment. Bring all to one setting before comparing.";
}
