using ChannelAudit.Reports.Wording;
using ChannelAudit.Signals.Statistics;

namespace ChannelAudit.Reports.Fairness;

/// <summary>The test that fits how things belong together. Never a test of single trials: those of one participant are alike, and taking them for independent
/// finds differences that are not there.</summary>
internal static class FairnessTests
{
    /// <summary>Seed of drawn arrangements: "even" in ASCII.</summary>
    private const ulong Seed = 0x6576656E;

    private const int Groups = 2;

    /// <summary>Tests levels that every participant has, by exchanging them within participants.</summary>
    /// <param name="start">The comparison with its shares.</param>
    /// <param name="units">For each participant with all levels the counts of each.</param>
    public static FairnessComparison Within(FairnessComparison start, ExcludedCount[][] units)
    {
        if (Refused(start) is { } refused)
        {
            return refused;
        }

        if (units.Length < 2)
        {
            string all = start.Levels == 2 ? "both" : "all";
            return start with
            {
                Units = units.Length,
                Note = $"no test: {(units.Length == 0 ? "no participant has" : "only one participant has")} {all} {start.Levels.Plain()} {FairnessWords.One(start.By)}s",
            };
        }

        double[] values = [.. units.SelectMany(unit => unit.Select(one => one.Share))];
        return Tested(start, FairnessTest.Within, units.Length, WithinPermutation.Of(values, units[0].Length, Seed));
    }

    /// <summary>Tests groups: by Fisher's exact test where every participant is one unit, else by exchanging participants among groups.</summary>
    /// <param name="start">The comparison with its shares.</param>
    /// <param name="units">For each participant its counts and its group, from 0.</param>
    public static FairnessComparison Between(FairnessComparison start, (ExcludedCount Count, int Group)[] units)
    {
        if (Refused(start) is { } refused)
        {
            return refused;
        }

        if (start is { Levels: Groups, Of: CountedThing.Channels, Channel: not null } && units.All(unit => unit.Count.Total == 1))
        {
            FisherResult fisher = FisherExact.Of(Count(units, 0, 1), Count(units, 0, 0), Count(units, 1, 1), Count(units, 1, 0));
            return WithLimits(start with
            {
                Test = FairnessTest.Fisher,
                Units = units.Length,
                IsExact = true,
                P = fisher.TwoSided,
                SmallestP = fisher.SmallestTwoSided,
            });
        }

        double[] values = [.. units.Select(unit => unit.Count.Share)];
        int[] labels = [.. units.Select(unit => unit.Group)];
        return Tested(start, FairnessTest.Between, units.Length, LabelPermutation.Of(values, labels, start.Levels, Seed));
    }

    private static int Count((ExcludedCount Count, int Group)[] units, int group, int excluded) =>
        units.Count(unit => unit.Group == group && unit.Count.Excluded == excluded);

    private static FairnessComparison? Refused(FairnessComparison start) => start switch
    {
        { Levels: 0 } => start with { Note = $"not assessed: no {FairnessWords.One(start.By)} is known" },
        { Levels: 1 } => start with { Note = $"not assessed: there is one {FairnessWords.One(start.By)} only" },
        { NothingExcluded: true } => start with { Note = "nothing was excluded" },
        _ => null,
    };

    private static FairnessComparison Tested(FairnessComparison start, FairnessTest test, int units, PermutationResult result) => WithLimits(start with
    {
        Test = test,
        Units = units,
        Arrangements = result.Arrangements,
        IsExact = result.IsExact,
        P = result.P,
        SmallestP = result.SmallestP,
    });

    private static FairnessComparison WithLimits(FairnessComparison tested) => tested.SmallestP < FairnessComparison.SmallP
        ? tested
        : tested with
        {
            Note = $"too few participants or exclusions to tell: the smallest p that they allow is {FairnessWords.Probability(tested.SmallestP!.Value)}",
        };
}
