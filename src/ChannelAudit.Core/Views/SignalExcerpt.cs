namespace ChannelAudit.Views;

/// <summary>A stretch of a channel to look at.</summary>
/// <param name="Trace">Least and greatest sample of each column; NaN where nothing is stored.</param>
/// <param name="Level">The middle of the trace: the median over its columns, in the unit of the channel; 0 where nothing is stored.</param>
public sealed record SignalExcerpt(Trace Trace, double Level);
