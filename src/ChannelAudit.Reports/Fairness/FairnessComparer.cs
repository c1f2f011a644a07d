using System.Collections.Immutable;
using ChannelAudit.Reports.Methods;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Fairness;

/// <summary>Makes the comparisons: which levels there are, whose counts they hold, and which test fits how they belong together.</summary>
internal sealed class FairnessComparer
{
    private readonly ExclusionTally _tally;
    private readonly ImmutableArray<ParticipantTally> _all;
    private readonly ImmutableArray<ParticipantTally> _grouped;
    private readonly string[] _channels;
    private readonly string[] _conditions;
    private readonly string[] _groups;
    private readonly List<FairnessComparison> _comparisons = [];
    private readonly List<ExclusionShare> _shares = [];

    /// <summary>Looks what there is to compare.</summary>
    public FairnessComparer(ExclusionTally tally)
    {
        _tally = tally;
        _all = tally.Participants;
        _grouped = [.. _all.Where(one => one.Groups.Count == 1)];
        _channels = Names(_all.SelectMany(one => one.ChannelNames));
        _conditions = Names(_all.SelectMany(one => one.Conditions).Where(condition => condition.Length > 0));
        _groups = Names(_all.SelectMany(one => one.Groups));
    }

    /// <summary>All comparisons and the shares behind them.</summary>
    public FairnessReport Report()
    {
        // With one channel only, "all channels" would say the same again.
        string?[] scopes = _channels.Length == 1 ? [_channels[0]] : [null, .. _channels];
        foreach (string? channel in Worth(scopes, _conditions))
        {
            Within(Compared.Condition, CountedThing.Trials, channel, _conditions, (one, condition) => one.Trials(channel, condition), UnlabelledNote());
        }

        foreach (string? channel in Worth(scopes, _groups))
        {
            Between(CountedThing.Trials, channel, one => one.Trials(channel, null));
        }

        foreach (string? channel in _groups.Length < 2 ? [] : scopes)
        {
            Between(CountedThing.Channels, channel, one => one.Channels(channel));
        }

        Within(Compared.Channel, CountedThing.Trials, null, _channels, (one, channel) => one.Trials(channel, null), null);
        Within(Compared.Channel, CountedThing.Channels, null, _channels, (one, channel) => one.Channels(channel), null);
        return new FairnessReport([.. _comparisons], [.. _shares], _all.Length, _tally.Unknown, _tally.Unlabelled);
    }

    // Where there is nothing to compare, once is enough to say so.
    private static string?[] Worth(string?[] scopes, string[] levels) => levels.Length < 2 ? scopes[..1] : scopes;

    private static string[] Names(IEnumerable<string> names) => [.. names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    private void Within(Compared by, CountedThing of, string? channel, string[] levels, Func<ParticipantTally, string, ExcludedCount> count, string? note)
    {
        ExcludedCount[][] units = [.. _all.Select(one => levels.Select(level => count(one, level)).ToArray())];
        FairnessComparison start = Start(by, of, channel, levels, [.. levels.Select((_, level) => units.Select(unit => unit[level]))]);
        ExcludedCount[][] whole = [.. units.Where(unit => unit.All(one => one.Total > 0))];
        int lacking = units.Count(unit => unit.Any(one => one.Total > 0)) - whole.Length;
        string? without = lacking == 0 ? null : $"{Quantities.Many(lacking, "participant")} without every {Word(by)} left out of the test";
        FairnessComparison tested = FairnessTests.Within(start, whole);
        _comparisons.Add(tested with { Note = Notes(tested.Note, tested.Test == FairnessTest.None ? null : without, note, UnknownNote(tested)) });
    }

    private void Between(CountedThing of, string? channel, Func<ParticipantTally, ExcludedCount> count)
    {
        (ExcludedCount Count, int Group)[] units =
        [
            .. _grouped.Select(one => (Count: count(one), Group: Array.IndexOf(_groups, one.Groups.Min))).Where(unit => unit.Count.Total > 0),
        ];
        string[] levels = [.. _groups.Where((_, group) => units.Any(unit => unit.Group == group))];
        units = [.. units.Select(unit => (unit.Count, Array.IndexOf(levels, _groups[unit.Group])))];
        IEnumerable<ExcludedCount>[] counts = [.. levels.Select((_, level) => units.Where(unit => unit.Group == level).Select(unit => unit.Count))];
        FairnessComparison tested = FairnessTests.Between(Start(Compared.Group, of, channel, levels, counts), units);
        int none = _all.Count(one => one.Groups.Count == 0);
        int several = _all.Count(one => one.Groups.Count > 1);
        _comparisons.Add(tested with
        {
            Note = Notes(
                tested.Note,
                none == 0 || levels.Length == 0 ? null : $"{Quantities.Many(none, "participant")} without a group left out",
                several == 0 ? null : $"{Quantities.Many(several, "participant")} in several groups left out",
                UnknownNote(tested)),
        });
    }

    private FairnessComparison Start(Compared by, CountedThing of, string? channel, string[] levels, IEnumerable<ExcludedCount>[] counts)
    {
        ExclusionShare[] shares =
        [
            .. levels.Select((level, place) =>
            {
                ExcludedCount sum = ExcludedCount.Sum(counts[place]);
                return new ExclusionShare(by, of, channel, level, new Share(sum.Excluded, sum.Total), counts[place].Count(one => one.Total > 0));
            }).Where(share => share.Excluded.Total > 0),
        ];
        _shares.AddRange(shares);
        FairnessComparison comparison = new() { By = by, Of = of, Channel = channel, Levels = shares.Length };
        return shares.Length < 2
            ? comparison
            : comparison with
            {
                Highest = shares.MaxBy(share => share.Excluded.Value),
                Lowest = Enumerable.Reverse(shares).MinBy(share => share.Excluded.Value),
                NothingExcluded = shares.All(share => share.Excluded.Count == 0),
            };
    }

    private string? UnknownNote(FairnessComparison tested) => _tally.Unknown == 0 || tested.Test == FairnessTest.None
        ? null
        : $"{Quantities.Many(_tally.Unknown, "recording")} of nobody known taken as a participant each";

    private string? UnlabelledNote() => _tally.Unlabelled == 0 || _conditions.Length == 0 ? null : $"{Quantities.Many(_tally.Unlabelled, "trial")} without a label left out";

    private static string? Notes(params ReadOnlySpan<string?> notes)
    {
        string joined = string.Join("; ", notes.ToArray().OfType<string>());
        return joined.Length == 0 ? null : joined;
    }

    private static string Word(Compared by) => FairnessWords.One(by);
}
