namespace ChannelAudit.Reports.Fairness;

/// <summary>Exclusions of several conditions, groups or channels against each other: a row of <c>fairness.tsv</c>.</summary>
public sealed record FairnessComparison
{
    /// <summary>From this difference of shares on a comparison stands out, whatever its probability; engineering judgement.</summary>
    public const double LargeDifference = 0.10;

    // Two shares that are ten points apart by their counts may differ from that in the last digit.
    private const double Rounding = 1e-12;

    /// <summary>Below this probability it stands out.</summary>
    public const double SmallP = 0.05;

    /// <summary>Between what.</summary>
    public required Compared By { get; init; }

    /// <summary>What is counted.</summary>
    public required CountedThing Of { get; init; }

    /// <summary>The channel, or null for all of them.</summary>
    public string? Channel { get; init; }

    /// <summary>How many conditions, groups or channels.</summary>
    public required int Levels { get; init; }

    /// <summary>The one with the largest share; null below two.</summary>
    public ExclusionShare? Highest { get; init; }

    /// <summary>The one with the smallest share; null likewise.</summary>
    public ExclusionShare? Lowest { get; init; }

    /// <summary>Largest less smallest share, 0 to 1; null likewise.</summary>
    public double? Difference => Highest?.Excluded.Value - Lowest?.Excluded.Value;

    /// <summary>The test.</summary>
    public FairnessTest Test { get; init; }

    /// <summary>Participants that the test rests on.</summary>
    public int Units { get; init; }

    /// <summary>Arrangements of labels looked at; 0 without.</summary>
    public int Arrangements { get; init; }

    /// <summary>Whether they are all there are, or the test is exact by itself.</summary>
    public bool IsExact { get; init; }

    /// <summary>Its probability, or null.</summary>
    public double? P { get; init; }

    /// <summary>The smallest probability that these participants and this number of exclusions allow, or null.</summary>
    public double? SmallestP { get; init; }

    /// <summary>Why there is no test, or what limits it; null when there is nothing to say.</summary>
    public string? Note { get; init; }

    /// <summary>Whether nothing at all was excluded, so that there is nothing to be uneven.</summary>
    public bool NothingExcluded { get; init; }

    /// <summary>Whether the difference is large by itself.</summary>
    public bool IsLarge => Difference >= LargeDifference - Rounding;

    /// <summary>The answer.</summary>
    public FairnessAnswer Answer =>
        Difference is null ? FairnessAnswer.NotAssessed
        : NothingExcluded ? FairnessAnswer.NoSign
        : P < SmallP || IsLarge ? FairnessAnswer.StandsOut
        : P is null || SmallestP >= SmallP ? FairnessAnswer.NotAssessed
        : FairnessAnswer.NoSign;
}
