using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Bundles;

/// <summary>From when to when samples of a trial are in a bundle.</summary>
/// <param name="FromS">Start, seconds from the recording's first stored sample.</param>
/// <param name="ToS">End.</param>
internal readonly record struct BundleSpan(decimal FromS, decimal ToS)
{
    /// <summary>The window of a trial and its baseline, with a margin on each side.</summary>
    public static BundleSpan Of(Trial trial) => new(
        Math.Min(trial.WindowFromS, trial.BaselineFromS ?? trial.WindowFromS) - BundleIndex.MarginS,
        Math.Max(trial.WindowToS, trial.BaselineFromS is null ? trial.WindowToS : trial.OnsetS) + BundleIndex.MarginS);
}
