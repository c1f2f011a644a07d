using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Verdicts;
using ChannelAudit.Views;

namespace ChannelAudit.Results;

/// <summary>One channel: its verdict, its whole-recording measures, and one cell a trial.</summary>
public sealed record ChannelResult
{
    /// <summary>The site's name when the setup gives one, else the label in the file.</summary>
    public required string Name { get; init; }

    /// <summary>The label in the file.</summary>
    public required string Label { get; init; }

    /// <summary>Samples per second.</summary>
    public required double RateHz { get; init; }

    /// <summary>The EMG band that was used, lower edge in Hz.</summary>
    public required double BandFromHz { get; init; }

    /// <summary>The EMG band that was used, upper edge in Hz.</summary>
    public required double BandToHz { get; init; }

    /// <summary>What the channel is compared by with other recordings; null in results of versions that did not measure it.</summary>
    public ChannelSignal? Signal { get; init; }

    /// <summary>The channel's verdict.</summary>
    public required Grade Verdict { get; init; }

    /// <summary>Reason codes, worst first.</summary>
    public required ImmutableArray<string> Reasons { get; init; }

    /// <summary>What could not be judged over the whole recording, worst first.</summary>
    public required ImmutableArray<NotAssessed> NotAssessed { get; init; }

    /// <summary>Measures of the whole recording (trial <c>all</c>).</summary>
    public required ImmutableArray<GradedMeasure> Measures { get; init; }

    /// <summary>Findings about the whole recording or a stretch of it.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>One cell a trial, in trial order.</summary>
    public required ImmutableArray<CellResult> Cells { get; init; }

    /// <summary>What pictures of the channel show beside this; null unless they were asked for. Part of no file.</summary>
    public ChannelView? View { get; init; }

    /// <summary>How many cells have a verdict.</summary>
    public int Count(Grade verdict) => Cells.Count(cell => cell.Verdict == verdict);
}
