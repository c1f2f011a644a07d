using System.Collections.Immutable;
using ChannelAudit.Survey;

namespace ChannelAudit.Findings.Bridges;

/// <summary>All that is known of a pair when words are found for it.</summary>
internal sealed record BridgeCase(
    PairSurvey Pair,
    string NameA,
    string NameB,
    BridgeMedians Whole,
    BridgeDecision Decision,
    ImmutableArray<BridgeSpan> Spans,
    bool IsShared);
