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

    /// <summary>Ids of the first and second electrode of the first channel; empty when the setup names none.</summary>
    public ImmutableArray<string> ElectrodesA { get; init; } = [];

    /// <summary>Those of the second channel.</summary>
    public ImmutableArray<string> ElectrodesB { get; init; } = [];

    /// <summary>Whether every third channel shares a high band that is worth speaking of: ground or a remote source, not gel.</summary>
    public bool IsCommonSource => IsShared && Math.Abs(Whole.RhoHighRest ?? 0) >= LeastShared;

    /// <summary>The medians and the decision that speak for a grade: the whole recording's, or those of its first span.</summary>
    public (BridgeMedians Medians, BridgeDecision Decision) Deciding(Grade grade) =>
        Decision.Grade != grade && Spans.FirstOrDefault(span => span.Decision.Grade == grade) is { } span
            ? (span.Medians, span.Decision)
            : (Whole, Decision);
}
