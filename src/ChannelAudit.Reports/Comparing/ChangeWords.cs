using System.Collections.Immutable;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Comparing;

/// <summary>One change in a line: <c>cheek, trial 3 (happy): pass -> questionable; now line-noise; line_rms 3.2 µV: limit 5 -> 3</c>.</summary>
internal static class ChangeWords
{
    /// <summary>The line; of several trials with all their numbers from the least to the greatest.</summary>
    public static string Of(ChangeGroup group)
    {
        VerdictChange change = group.First;
        List<string> parts = [Verdicts(change)];
        if (change is { VerdictA: not null, VerdictB: not null })
        {
            Add(parts, "now", change.ReasonsNew);
            Add(parts, "no longer", change.ReasonsGone);
            Add(parts, "now not assessed:", change.NotAssessedNew);
            Add(parts, "now assessed:", change.NotAssessedGone);
        }

        MeasureChange[] measures = [.. group.Changes.Select(one => one.Measure).OfType<MeasureChange>()];
        if (measures.Length > 0)
        {
            parts.Add(Measure(measures));
        }

        return TerminalText.Clean($"{Place(group)}: {string.Join("; ", parts)}");
    }

    private static string Place(ChangeGroup group)
    {
        VerdictChange change = group.First;
        if (change.Trial is not { } trial)
        {
            return $"{change.Channel}, whole channel";
        }

        if (group.Changes.Length > 1)
        {
            string trials = Quantities.Many(group.Changes.Length, "trial");
            return group.Changes.Length == change.OfTrials ? $"all {trials} of {change.Channel}"
                : $"{change.Channel}, {trials} ({TrialList.Of([.. group.Changes.Select(one => one.Trial!.Value).Order()])})";
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

    private static string Measure(MeasureChange[] measures)
    {
        MeasureChange change = measures[0];
        string unit = string.Equals(change.Unit, "1", StringComparison.Ordinal) ? string.Empty : " " + Quantities.Unit(change.Unit);
        string? before = Range(measures.Select(one => one.ValueA));
        string? after = Range(measures.Select(one => one.ValueB));
        string values = change.Where is not null ? before ?? after ?? "no value" : Pair(before ?? "no value", after ?? "no value");
        string where = change.Where is { } words ? " " + words : string.Empty;
        return $"{change.Measure} {values}{unit}{where}: limit {Pair(Short(change.LimitA), Short(change.LimitB))}";
    }

    private static string? Range(IEnumerable<double?> values)
    {
        double[] known = [.. values.OfType<double>()];
        if (known.Length == 0)
        {
            return null;
        }

        (string least, string most) = (Quantities.Short(known.Min()), Quantities.Short(known.Max()));
        return string.Equals(least, most, StringComparison.Ordinal) ? least : $"{least} to {most}";
    }

    private static string Short(double? limit) => limit is { } known ? Quantities.Short(known) : "none";

    private static string Pair(string before, string after) => string.Equals(before, after, StringComparison.Ordinal) ? before : $"{before} -> {after}";
}
