using System.Collections.Immutable;
using ChannelAudit.Toml;

namespace ChannelAudit.Setup;

/// <summary>The <c>[protocol]</c> table.</summary>
internal static class ProtocolTable
{
    private const int MostTrials = 100_000;
    private static readonly ImmutableArray<string> Orders = ["any", "as-listed"];

    /// <summary>Reads it.</summary>
    public static ProtocolSetup Read(TomlSection section)
    {
        ImmutableArray<ExpectedTrials> listed =
            [.. section.Entries("trials").Select(entry => new ExpectedTrials(entry.Name.Trim(), section.WholeIn("trials", entry.Value)))];
        ImmutableArray<string> sequence = Sequence(section, listed);
        ImmutableArray<ExpectedTrials> expected = listed.IsEmpty
            ? [.. sequence.GroupBy(label => label, StringComparer.Ordinal).Select(group => new ExpectedTrials(group.Key, group.Count()))]
            : listed;
        if (expected.Sum(one => (long)one.Count) > MostTrials)
        {
            throw ProtocolErrors.TooManyTrials(section, MostTrials);
        }

        bool isByLabel = section.Find("duration_s")?.Kind == TomlKind.Table;
        return new ProtocolSetup
        {
            Trials = expected,
            Sequence = sequence,
            DurationS = isByLabel || section.Find("duration_s") is not { } duration ? null : Range(section, "duration_s", duration),
            DurationsS = isByLabel ? Durations(section, expected) : new ProtocolSetup().DurationsS,
            GapS = section.Find("gap_s") is { } gap ? Range(section, "gap_s", gap) : null,
        };
    }

    private static ImmutableArray<string> Sequence(TomlSection section, ImmutableArray<ExpectedTrials> listed)
    {
        if (section.Find("order") is not { } order)
        {
            return [];
        }

        if (order.Kind == TomlKind.List)
        {
            return Repeated(section, listed, section.Texts("order"));
        }

        return section.Text("order") switch
        {
            "any" => [],
            "as-listed" when listed.IsEmpty => throw ProtocolErrors.NothingListed(section),
            "as-listed" => [.. listed.SelectMany(one => Enumerable.Repeat(one.Label, one.Count))],
            { } other => throw SetupErrors.NotAmong(section, "order", other, Orders),
            _ => [],
        };
    }

    // A list shorter than the session is gone through again and again, as a program does that alternates.
    private static ImmutableArray<string> Repeated(TomlSection section, ImmutableArray<ExpectedTrials> listed, ImmutableArray<string> order)
    {
        if (order.IsEmpty)
        {
            throw ProtocolErrors.EmptyOrder(section);
        }

        if (listed.IsEmpty)
        {
            return order;
        }

        string[] names = [.. listed.Select(one => one.Label)];
        if (order.FirstOrDefault(label => !names.Contains(label, StringComparer.Ordinal)) is { } stranger)
        {
            throw ProtocolErrors.UnknownLabel(section, "order", section.LineOf("order"), stranger, names);
        }

        long times = listed.Sum(one => (long)one.Count) / order.Length;
        foreach (ExpectedTrials one in listed)
        {
            long said = times * order.Count(label => string.Equals(label, one.Label, StringComparison.Ordinal));
            if (said != one.Count)
            {
                throw ProtocolErrors.OrderDoesNotGoInto(section, one);
            }
        }

        return [.. Enumerable.Range(0, (int)times).SelectMany(_ => order)];
    }

    private static ImmutableSortedDictionary<string, TimeRange> Durations(TomlSection section, ImmutableArray<ExpectedTrials> expected)
    {
        string[] names = [.. expected.Select(one => one.Label)];
        ImmutableSortedDictionary<string, TimeRange>.Builder durations = ImmutableSortedDictionary.CreateBuilder<string, TimeRange>(StringComparer.Ordinal);
        foreach ((string name, TomlNode value) in section.Entries("duration_s"))
        {
            string label = name.Trim();
            durations[label] = names.Length == 0 || names.Contains(label, StringComparer.Ordinal)
                ? Range(section, "duration_s", value)
                : throw ProtocolErrors.UnknownLabel(section, "duration_s", value.Line, label, names);
        }

        return durations.ToImmutable();
    }

    private static TimeRange Range(TomlSection section, string key, TomlNode value)
    {
        ImmutableArray<decimal> ends = section.ExactsIn(key, value);
        if (ends.Length != 2)
        {
            throw ProtocolErrors.NotARange(section, key, value.Line, ends.Length);
        }

        return ends[0] <= ends[1] ? new TimeRange(ends[0], ends[1]) : throw ProtocolErrors.RangeTurned(section, key, value.Line, ends[0], ends[1]);
    }
}
