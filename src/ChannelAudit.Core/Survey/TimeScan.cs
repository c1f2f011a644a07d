using ChannelAudit.Measures;

namespace ChannelAudit.Survey;

/// <summary>What a window shows without any spectrum: rails, use of the range, baseline.</summary>
/// <param name="ClippedSamples">Samples at a rail.</param>
/// <param name="ClippedRun">Longest run at a rail, in samples.</param>
/// <param name="PeakUsePercent">99.9th percentile of the distance from the median against the nearer rail; null without rails or samples.</param>
/// <param name="Baseline">One level a second.</param>
/// <param name="Swing">Greatest less least sample; null without samples.</param>
public sealed record TimeScan(long ClippedSamples, long ClippedRun, double? PeakUsePercent, BaselineLevels Baseline, double? Swing);
