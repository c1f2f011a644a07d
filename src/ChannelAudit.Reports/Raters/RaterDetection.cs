using ChannelAudit.Signals.Statistics;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Raters;

/// <summary>What the criteria call against what people say.</summary>
/// <param name="Against">The rater, or <see cref="RatedSet.People"/>.</param>
/// <param name="CalledFrom">Verdicts as bad as this or worse are a call.</param>
/// <param name="TrueFrom">Labels as bad as this or worse are true.</param>
/// <param name="Counts">Calls against labels.</param>
public sealed record RaterDetection(string Against, Grade CalledFrom, Grade TrueFrom, DetectionCounts Counts);
