using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Bridges;

/// <summary>What was decided about two channels, for the recording and for each trial.</summary>
public sealed record PairJudgement
{
    /// <summary>Position of the first channel among the audited ones.</summary>
    public required int A { get; init; }

    /// <summary>Position of the second channel.</summary>
    public required int B { get; init; }

    /// <summary>Medians and the decision in words.</summary>
    public required BridgeEvidence Evidence { get; init; }

    /// <summary>The medians that decided: the whole recording's, or those of the first part of it that is joined.</summary>
    public BridgeEvidence Deciding { get => field ?? Evidence; init; }

    /// <summary>The finding both channels carry, or null.</summary>
    public Finding? Finding { get; init; }

    /// <summary>What it does to the channels' own verdicts.</summary>
    public Grade ChannelGrade { get; init; }

    /// <summary>Its grade in each trial, in trial order.</summary>
    public required ImmutableArray<Grade> Trials { get; init; }

    /// <summary>Something worth knowing that changes no verdict, or null.</summary>
    public Finding? Information { get; init; }

    /// <summary>The limits as they hold for this pair; empty when it could not be compared.</summary>
    public ImmutableArray<BridgeLimit> Limits { get; init; } = [];

    /// <summary>Whether every third channel shares the high band alike.</summary>
    public bool IsCommonSource { get; init; }

    /// <summary>Whether the two share so much that a person may ask whether they are joined.</summary>
    public bool IsSuspect => Finding is not null || Information is not null || IsCommonSource;
}
