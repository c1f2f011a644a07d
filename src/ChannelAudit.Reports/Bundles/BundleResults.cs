using ChannelAudit.Results;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Bundles;

/// <summary>What every result of ours keeps to, asked of one from anywhere before anything is measured by it.</summary>
internal static class BundleResults
{
    // Thirty years; sample indices stay far from the end of their range.
    private const decimal FarthestS = 1e9m;

    /// <summary>Refuses names and trials that stand twice, and windows that no recording has.</summary>
    /// <param name="result">The result.</param>
    /// <param name="file">The bundle.</param>
    /// <param name="entry">The result's path in it.</param>
    /// <exception cref="ChannelAuditException">When it is so.</exception>
    public static void Require(RecordingResult result, string file, string entry)
    {
        string? fault = result.Channels.DistinctBy(channel => channel.Name, StringComparer.Ordinal).Count() != result.Channels.Length ? "a channel that stands there twice"
            : result.Channels.Any(channel => channel.Cells.DistinctBy(cell => cell.Trial).Count() != channel.Cells.Length) ? "a channel with a trial twice"
            : result.Pairs.DistinctBy(pair => (pair.ChannelA, pair.ChannelB)).Count() != result.Pairs.Length ? "a pair that stands there twice"
            : !result.Trials.All(IsPossible) ? "a trial at a time that no recording has"
            : null;
        if (fault is not null)
        {
            throw BundleErrors.Refused(file, entry, fault);
        }
    }

    private static bool IsPossible(Trial trial) =>
        IsNear(trial.WindowFromS) && IsNear(trial.WindowToS) && IsNear(trial.OnsetS) && IsNear(trial.BaselineFromS ?? 0)
        && trial.WindowFromS <= trial.WindowToS && (trial.BaselineFromS ?? trial.OnsetS) <= trial.OnsetS;

    private static bool IsNear(decimal seconds) => Math.Abs(seconds) <= FarthestS;
}
