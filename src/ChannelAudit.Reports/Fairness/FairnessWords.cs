using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Fairness;

/// <summary>Comparisons of exclusions in words and codes.</summary>
public static class FairnessWords
{
    /// <summary>The title of the section.</summary>
    public const string Title = "Are exclusions even?";

    /// <summary>What no test was made of, and why.</summary>
    public const string NoTrialTest = "No test takes single trials for independent: those of one participant are alike, and such a test finds differences that are not there.";

    /// <summary>The word of what is compared, in tables too.</summary>
    public static string One(Compared by) => by switch
    {
        Compared.Condition => "condition",
        Compared.Group => "group",
        _ => "channel",
    };

    /// <summary>The word of what is counted, in tables too.</summary>
    public static string Things(CountedThing of) => of == CountedThing.Trials ? "trials" : "channels";

    /// <summary>The code of a test.</summary>
    public static string Code(FairnessTest test) => test switch
    {
        FairnessTest.Fisher => "fisher",
        FairnessTest.Within => "permutation-within",
        FairnessTest.Between => "permutation-between",
        _ => "none",
    };

    /// <summary>The code of an answer.</summary>
    public static string Code(FairnessAnswer answer) => answer switch
    {
        FairnessAnswer.StandsOut => "stands-out",
        FairnessAnswer.NoSign => "no-sign",
        _ => "not-assessed",
    };

    /// <summary>An answer as people read it, with what makes a comparison stand out.</summary>
    public static string Answer(FairnessComparison one)
    {
        ArgumentNullException.ThrowIfNull(one);
        return one.Answer switch
        {
            FairnessAnswer.StandsOut when one.P < FairnessComparison.SmallP => one.IsLarge ? "stands out: p and size" : "stands out: p",
            FairnessAnswer.StandsOut => "stands out: size",
            FairnessAnswer.NoSign => "no sign of a difference",
            _ => "not assessed",
        };
    }

    /// <summary>What a comparison is about: <c>trials at cheek, by condition</c>.</summary>
    public static string Subject(FairnessComparison one)
    {
        ArgumentNullException.ThrowIfNull(one);
        string where = one.By == Compared.Channel ? string.Empty
            : one.Channel is { } channel ? $" at {channel}"
            : one.Of == CountedThing.Trials ? " at all channels" : " of all sites";
        return $"{Things(one.Of)}{where}, by {One(one.By)}";
    }

    /// <summary>Three decimals, or <c>below 0.001</c>.</summary>
    public static string Probability(double p) => p < 0.001 ? "below 0.001" : p.ToString("F3", CultureInfo.InvariantCulture);

    /// <summary>What a test rests on: <c>conditions exchanged within each of 12 participants, 2048 arrangements in all</c>.</summary>
    public static string Test(FairnessComparison one)
    {
        ArgumentNullException.ThrowIfNull(one);
        string drawn = one.IsExact ? $"{Quantities.Many(one.Arrangements, "arrangement")} in all" : $"{one.Arrangements.Plain()} arrangements drawn";
        string participants = Quantities.Many(one.Units, "participant");
        return one.Test switch
        {
            FairnessTest.Fisher => $"Fisher's exact test, {participants} as one unit each",
            FairnessTest.Within => $"{One(one.By)}s exchanged within each of {participants}, {drawn}",
            FairnessTest.Between => $"groups exchanged among {participants}, {drawn}",
            _ => "no test",
        };
    }

    /// <summary>A comparison in a clause: <c>trials at cheek, by condition: smile 14 of 80 (17.5 %, ...) against frown 2 of 80 (...), 15 points, p = 0.016</c>.</summary>
    public static string Of(FairnessComparison one)
    {
        ArgumentNullException.ThrowIfNull(one);
        if (one is not { Highest: { } highest, Lowest: { } lowest, Difference: { } difference })
        {
            return $"{Subject(one)}: {one.Note}";
        }

        string p = one.P is { } probability ? $", p {(probability < 0.001 ? string.Empty : "= ")}{Probability(probability)}" : ", no test";
        return $"{Subject(one)}: {highest.Level} {highest.Excluded} against {lowest.Level} {lowest.Excluded}, {Points(difference)}{p}";
    }

    /// <summary>A difference of shares in points.</summary>
    public static string Points(double difference)
    {
        string points = (100 * difference).ToString("F1", CultureInfo.InvariantCulture);
        return string.Equals(points, "1.0", StringComparison.Ordinal) ? "1.0 point" : $"{points} points";
    }

    /// <summary>What a reader should know before the tables.</summary>
    public static ImmutableArray<string> Lead(FairnessReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        List<string> sentences =
        [
            "Verdicts are made without looking at conditions and groups; this only looks afterwards.",
            $"{Quantities.Many(report.Comparisons.Length, "comparison")} {(report.Comparisons.Length == 1 ? "was" : "were")} looked at:"
            + $" {report.CountOf(FairnessAnswer.StandsOut).Plain()} {(report.CountOf(FairnessAnswer.StandsOut) == 1 ? "stands" : "stand")} out,"
            + $" {report.CountOf(FairnessAnswer.NoSign).Plain()} show no sign of a difference, {report.CountOf(FairnessAnswer.NotAssessed).Plain()} could not be assessed.",
        ];
        if (report.Tested > 1)
        {
            sentences.Add($"{report.Tested.Plain()} were tested; by chance alone one test in twenty falls below 0.05, and nothing was corrected for their number.");
        }

        sentences.Add("A comparison stands out when p is below 0.05 or shares are ten points and more apart.");
        if (report.Unknown > 0)
        {
            sentences.Add($"Of {Quantities.Many(report.Unknown, "recording")} nobody knows whose they are: each counts as one participant, which finds too much where they share one.");
        }

        return [.. sentences];
    }
}
