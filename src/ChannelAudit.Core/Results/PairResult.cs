using System.Collections.Immutable;
using ChannelAudit.Views;

namespace ChannelAudit.Results;

/// <summary>Two channels: what they share.</summary>
public sealed record PairResult
{
    /// <summary>Name of the first channel.</summary>
    public required string ChannelA { get; init; }

    /// <summary>Name of the second channel.</summary>
    public required string ChannelB { get; init; }

    /// <summary>Rows in order: every trial of 2 s and more by number, then <c>all</c>, <c>rest</c>, <c>active_a</c>, <c>active_b</c>.</summary>
    public required ImmutableArray<PairRow> Rows { get; init; }

    /// <summary>The medians over 1 s segments that decide a bridge.</summary>
    public required BridgeEvidence Evidence { get; init; }

    /// <summary>What a picture of the pair shows beside this; null unless pictures were asked for and the pair is suspect. Part of no file.</summary>
    public PairView? View { get; init; }
}
