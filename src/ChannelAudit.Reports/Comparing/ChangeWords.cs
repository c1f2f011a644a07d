using System.Collections.Immutable;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Comparing;

/// <summary>One change in a line: <c>cheek, trial 3 (happy): pass -> questionable; now line-noise; line_rms 3.2 µV: limit 5 -> 3</c>.</summary>
internal static class ChangeWords
{
    /// <summary>The line.</summary>
    public static string Of(VerdictChange change)
    {
        List<string> parts = [Verdicts(change)];
        if (change is { VerdictA: not null, VerdictB: not null })
        {
            Add(parts, "now", change.ReasonsNew);
            Add(parts, "no longer", change.ReasonsGone);
            Add(parts, "now not assessed:", change.NotAssessedNew);
            Add(parts, "now assessed:", change.NotAssessedGone);
        }

        if (change.Measure is { } measure)
        {
            parts.Add(Measure(measure));
        }

        return TerminalText.Clean($"{Place(change)}: {string.Join("; ", parts)}");
    }

    private static string Place(VerdictChange change)
    {
        if (change.Trial is not { } trial)
        {
            return $"{change.Channel}, whole channel";
        }

        string condition = change.Condition is { } label ? $" ({label})" : string.Empty;
        return $"{change.Channel}, trial {trial.Plain()}{condition}";
    }

    private static string Verdicts(VerdictChange change) => (change.VerdictA, change.VerdictB) switch
    {
        ({ } a, null) => $"only in A, {VerdictWords.Code(a)}",
        (null, { } b) => $"only in B, {VerdictWords.Code(b)}",
        ({ } a, { } b) when a == b => $"still {VerdictWords.Code(a)}",
        _ => $"{VerdictWords.Code(change.VerdictA ?? Grade.Pass)} -> {VerdictWords.Code(change.VerdictB ?? Grade.Pass)}",
    };

    private static void Add(List<string> parts, string words, ImmutableArray<string> codes)
    {
        if (!codes.IsEmpty)
        {
            parts.Add($"{words} {string.Join(", ", codes)}");
        }
    }

    private static string Measure(MeasureChange change)
    {
        string unit = string.Equals(change.Unit, "1", StringComparison.Ordinal) ? string.Empty : " " + Quantities.Unit(change.Unit);
        return $"{change.Measure} {Pair(change.ValueA, change.ValueB, "no value")}{unit}: limit {Pair(change.LimitA, change.LimitB, "none")}";
    }

    private static string Pair(double? a, double? b, string none)
    {
        string before = a is { } valueA ? Quantities.Short(valueA) : none;
        string after = b is { } valueB ? Quantities.Short(valueB) : none;
        return string.Equals(before, after, StringComparison.Ordinal) ? before : $"{before} -> {after}";
    }
}
