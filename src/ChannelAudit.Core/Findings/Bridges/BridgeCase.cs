using System.Collections.Immutable;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Bridges;

/// <summary>All that is known of a pair when words are found for it.</summary>
internal sealed record BridgeCase(
    PairSurvey Pair,
    string NameA,
    string NameB,
    BridgeMedians Whole,
    BridgeDecision Decision,
    ImmutableArray<BridgeSpan> Spans,
    ImmutableArray<BridgeLimit> Limits,
    bool IsShared)
{
    private const double LeastShared = 0.12;

    /// <summary>Whether every third channel shares a high band that is worth speaking of: ground or a remote source, not gel.</summary>
    public bool IsCommonSource => IsShared && Math.Abs(Whole.RhoHighRest ?? 0) >= LeastShared;

    /// <summary>The decision that speaks for a grade: the whole recording's, or that of its first span.</summary>
    public BridgeDecision Deciding(Grade grade) => Decision.Grade == grade
        ? Decision
        : Spans.Select(span => span.Decision).FirstOrDefault(span => span.Grade == grade) ?? Decision;
}
