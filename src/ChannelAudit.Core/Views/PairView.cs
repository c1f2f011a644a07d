using System.Collections.Immutable;
using ChannelAudit.Findings.Bridges;
using ChannelAudit.Measures;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Views;

/// <summary>What a picture of two channels needs beside their result; kept only when pictures are asked for, and written nowhere.</summary>
public sealed record PairView
{
    /// <summary>What was decided about the pair: pass, questionable (suspected) or reject (bridged).</summary>
    public required Grade Grade { get; init; }

    /// <summary>From when to when that holds, in seconds.</summary>
    public required (double FromS, double ToS) Stretch { get; init; }

    /// <summary>Whether it holds in a part of the recording only; then moment, coherence and medians are those of that part.</summary>
    public required bool IsPart { get; init; }

    /// <summary>The medians that decided: the whole recording's, or those of the first part of it that is joined.</summary>
    public required BridgeEvidence Medians { get; init; }

    /// <summary>Whether every other channel shares it alike.</summary>
    public required bool IsCommonSource { get; init; }

    /// <summary>The correlation second by second.</summary>
    public required ImmutableArray<PairSecond> Seconds { get; init; }

    /// <summary>Coherence with both quiet; null when they never were.</summary>
    public required CoherenceSteps? Rest { get; init; }

    /// <summary>Coherence in contractions of the first; null without any.</summary>
    public required CoherenceSteps? ActiveA { get; init; }

    /// <summary>Coherence in contractions of the second; null without any.</summary>
    public required CoherenceSteps? ActiveB { get; init; }

    /// <summary>A typical moment, or null when there is none.</summary>
    public required PairMoment? Moment { get; init; }

    /// <summary>The limits of the medians that decide.</summary>
    public required ImmutableArray<BridgeLimit> Limits { get; init; }
}
