namespace ChannelAudit.Findings;

/// <summary>What a fault does to the mean rectified amplitude of the trial, behind the scoring filter.</summary>
/// <param name="Microvolts">What it adds, below zero what it takes, in µV; null where the amplitude is not known.</param>
/// <param name="Percent">The same in % of the amplitude without the fault; null when it could not be said.</param>
/// <param name="WithoutUv">The mean rectified amplitude without the fault in µV, or null.</param>
/// <param name="Note">What limits the numbers, or why there are none; null when there is nothing to say.</param>
public sealed record ScoreEffect(double? Microvolts, double? Percent, double? WithoutUv, string? Note = null);
