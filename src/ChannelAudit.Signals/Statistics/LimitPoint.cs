using System.Runtime.InteropServices;

namespace ChannelAudit.Signals.Statistics;

/// <summary>What a limit would call: everything at the limit and above.</summary>
/// <param name="Limit">The limit in the unit of the values; positive infinity calls nothing.</param>
/// <param name="Counts">The calls against the truth.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct LimitPoint(double Limit, DetectionCounts Counts);
