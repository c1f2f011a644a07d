using System.Collections.Immutable;

namespace ChannelAudit.Criteria;

/// <summary>The limits of one reason code.</summary>
public sealed record Criterion
{
    /// <summary>The reason code.</summary>
    public required string Reason { get; init; }

    /// <summary>Alternatives that make a trial questionable: any one suffices, and within one all limits must be reached.</summary>
    public ImmutableArray<LimitSet> Questionable { get; init; } = [];

    /// <summary>Alternatives that make a trial reject.</summary>
    public ImmutableArray<LimitSet> Reject { get; init; } = [];

    /// <summary>Alternatives on the whole recording's measures that make the channel (never its trials) questionable.</summary>
    public ImmutableArray<LimitSet> ChannelQuestionable { get; init; } = [];

    /// <summary>Alternatives on the whole recording's measures that make the channel (never its trials) reject.</summary>
    public ImmutableArray<LimitSet> ChannelReject { get; init; } = [];

    /// <summary>Where the limits come from.</summary>
    public required string Source { get; init; }
}
