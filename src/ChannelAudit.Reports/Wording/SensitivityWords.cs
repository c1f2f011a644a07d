using System.Collections.Immutable;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Wording;

/// <summary>On which limits the exclusions of a run hang, in sentences.</summary>
public static class SensitivityWords
{
    /// <summary>The heading.</summary>
    public const string Title = "What hangs on the limits";

    private const double Half = 0.5;
    private const double Twice = 2;

    /// <summary>The sentences, in order.</summary>
    /// <param name="tally">The run.</param>
    public static ImmutableArray<string> Sentences(SensitivityTally tally)
    {
        ArgumentNullException.ThrowIfNull(tally);
        if (tally.Recordings == 0)
        {
            return ["It was not counted in this run."];
        }

        GradeCounts now = tally.InForce.Trials;
        string counted = $"By the limits in force {Rejected(now.Reject)} of {Quantities.Many(now.Total, "trial")} (each counted once a channel).";
        ImmutableArray<string> reasons = tally.ReasonsOfTrials;
        return tally.ReasonsThatMatter.IsEmpty
            ? [counted, "Limits from half as large to twice as large would change no verdict.", .. Left(tally)]
            :
            [
                counted,
                $"Limits half as large would {Change(tally, MovedLimits.AllReasons, Half)}; limits twice as large would {Change(tally, MovedLimits.AllReasons, Twice)}.",
                .. reasons.IsEmpty ? (string[])[] : [Deciding(tally, reasons), Others(tally, reasons)],
                .. OfChannels(tally, reasons),
                .. Left(tally),
            ];
    }

    /// <summary>A factor in words: <c>half the limits</c>.</summary>
    public static string Factor(double factor) => factor is 1 ? "in force" : $"\u00D7{Quantities.Short(factor)}";

    /// <summary>The name of a row.</summary>
    public static string Name(string reason) =>
        string.Equals(reason, MovedLimits.AllReasons, StringComparison.Ordinal) ? "all limits together" : ReasonWords.For(reason).Name;

    private static string Rejected(int count) => count == 1 ? "1 is rejected" : $"{count.Plain()} are rejected";

    /// <summary><c>reject 12 trials more</c>, <c>reject 3 trials fewer</c>, or what else they would do.</summary>
    private static string Change(SensitivityTally tally, string reason, double factor)
    {
        GradeCounts difference = tally.Row(reason, factor).Trials.Minus(tally.InForce.Trials);
        return difference.Reject switch
        {
            > 0 => $"reject {difference.Reject.Plain()} more",
            < 0 => $"reject {(-difference.Reject).Plain()} fewer",
            _ when difference == default => "change no trial",
            _ => $"reject as many, and make {Math.Abs(difference.Questionable).Plain()} {(difference.Questionable > 0 ? "more" : "fewer")} questionable",
        };
    }

    private static string Deciding(SensitivityTally tally, ImmutableArray<string> reasons)
    {
        string first = reasons[0];
        return $"Most hangs on {Name(first)}: moved alone, half its limits would {Change(tally, first, Half)}, twice its limits would {Change(tally, first, Twice)}.";
    }

    private static string Others(SensitivityTally tally, ImmutableArray<string> reasons)
    {
        string[] rejecting = [.. reasons.Skip(1).Where(reason => tally.Swing(reason, counts => counts.Trials.Reject) > 0).Select(Name)];
        string[] doubting = [.. reasons.Skip(1).Where(reason => tally.Swing(reason, counts => counts.Trials.Reject) == 0).Select(Name)];
        return (rejecting.Length, doubting.Length) switch
        {
            (0, 0) => "Moved alone, no other limits change a trial.",
            (_, 0) => $"After it: {string.Join(", ", rejecting)}. Moved alone, no other limits change a trial.",
            (0, _) => $"Moved alone, only {string.Join(", ", doubting)} would change other trials, and none that is rejected.",
            _ => $"After it: {string.Join(", ", rejecting)}. Of questionable trials alone: {string.Join(", ", doubting)}.",
        };
    }

    // A channel has limits of its own, and a share of bad trials: they are in no table that counts trials.
    private static ImmutableArray<string> OfChannels(SensitivityTally tally, ImmutableArray<string> ofTrials)
    {
        string[] others = [.. tally.ReasonsThatMatter.Except(ofTrials, StringComparer.Ordinal).Select(Name)];
        return others.Length == 0 ? [] : [$"Verdicts of channels alone, and no trial, hang on {string.Join(", ", others)}."];
    }

    private static ImmutableArray<string> Left(SensitivityTally tally) => tally.Without == 0
        ? []
        : [$"{Quantities.Many(tally.Without, "recording")} of an earlier version could not be counted."];
}
