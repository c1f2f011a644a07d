using System.Collections.Immutable;

namespace ChannelAudit.Reports.Fairness;

/// <summary>Whether exclusions are even over conditions, groups and channels. Verdicts are made without looking at these; this only looks afterwards.</summary>
/// <param name="Comparisons">All comparisons, in a fixed order.</param>
/// <param name="Shares">The shares behind them.</param>
/// <param name="Participants">Participants, and recordings of nobody known, which count as one each.</param>
/// <param name="Unknown">Recordings of nobody known.</param>
/// <param name="Unlabelled">Scored trials without a label, each counted once a channel.</param>
public sealed record FairnessReport(
    ImmutableArray<FairnessComparison> Comparisons, ImmutableArray<ExclusionShare> Shares, int Participants, int Unknown, int Unlabelled)
{
    /// <summary>Comparisons with an answer.</summary>
    public int CountOf(FairnessAnswer answer) => Comparisons.Count(one => one.Answer == answer);

    /// <summary>Comparisons with a test.</summary>
    public int Tested => Comparisons.Count(one => one.P is not null);
}
