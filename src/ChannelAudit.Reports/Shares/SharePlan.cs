using System.Collections.Immutable;
using ChannelAudit.Runs;

namespace ChannelAudit.Reports.Shares;

/// <summary>What a share is a part of.</summary>
/// <param name="Share">Which part.</param>
/// <param name="All">Every recording of the run, in its order.</param>
/// <param name="Figures">The pictures that were asked for: <c>none</c>, <c>summary</c> or <c>all</c>.</param>
/// <param name="IsAlone">Whether the run is over one recording.</param>
public sealed record SharePlan(RecordingShare Share, ImmutableArray<RecordingEntry> All, string Figures, bool IsAlone);
