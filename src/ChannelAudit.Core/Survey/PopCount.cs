namespace ChannelAudit.Survey;

/// <summary>The pops of a window.</summary>
/// <param name="Count">How many.</param>
/// <param name="SharePercent">What they hold of the window's high-passed energy; null for the whole recording.</param>
/// <param name="SpikeSharePercent">The same with spikes that come with the stimuli.</param>
/// <param name="MuscleLike">How many of them have their energy where a muscle's lies.</param>
public readonly record struct PopCount(int Count, double? SharePercent, double? SpikeSharePercent, int MuscleLike = 0);
