using System.Collections.Immutable;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>What the page says about a cell. In a blind review everything that could give the computed verdict or the condition away is null or empty.</summary>
public sealed record CellView
{
    /// <summary>The number of the cell, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>The channel's name.</summary>
    public required string Channel { get; init; }

    /// <summary>The recording's id; null in a blind review.</summary>
    public string? Recording { get; init; }

    /// <summary>The trial's number; null in a blind review.</summary>
    public int? Trial { get; init; }

    /// <summary>The trial's label; null when it has none, and in a blind review.</summary>
    public string? Label { get; init; }

    /// <summary>When it is, in words.</summary>
    public string? When { get; init; }

    /// <summary>Start of the scoring window, in seconds from what the page calls zero.</summary>
    public required double WindowFromS { get; init; }

    /// <summary>End of the scoring window.</summary>
    public required double WindowToS { get; init; }

    /// <summary>Start of what is shown at first.</summary>
    public required double FromS { get; init; }

    /// <summary>End of what is shown at first.</summary>
    public required double ToS { get; init; }

    /// <summary>The first moment that one may look at.</summary>
    public required double LeastS { get; init; }

    /// <summary>The last moment that one may look at.</summary>
    public required double MostS { get; init; }

    /// <summary>The computed verdict; null in a blind review.</summary>
    public string? Verdict { get; init; }

    /// <summary>The verdict after decisions; null in a blind review.</summary>
    public string? Final { get; init; }

    /// <summary>What was found, in the words of the report.</summary>
    public ImmutableArray<FindingView> Findings { get; init; } = [];

    /// <summary>What could not be judged, and why.</summary>
    public ImmutableArray<OpenQuestionView> NotAssessed { get; init; } = [];

    /// <summary>How its channel stands as a whole; null in a blind review.</summary>
    public ChannelStandView? Whole { get; init; }

    /// <summary>How many other undecided trials of the channel have the same verdict for the same reasons; 0 in a blind review.</summary>
    public int Alike { get; init; }

    /// <summary>The measures that have limits, beside them; those beyond a limit first.</summary>
    public ImmutableArray<MeasureView> Measures { get; init; } = [];

    /// <summary>Decisions that are about it, its trial or its channel; in a blind review the own ones only.</summary>
    public ImmutableArray<DecisionView> Decisions { get; init; } = [];

    /// <summary>Whether it is decided.</summary>
    public required bool IsDecided { get; init; }

    /// <summary>Whether the signal that is shown is the one that was audited: <c>none</c>, <c>checking</c>, <c>same</c>, <c>differs</c> or <c>missing</c>.</summary>
    public required string Data { get; init; }

    /// <summary>The same in words for a person; empty when all is well.</summary>
    public string DataWords { get; init; } = string.Empty;

    /// <summary>Why nothing can be decided here; empty when it can.</summary>
    public string Obstacle { get; init; } = string.Empty;

    /// <summary>The longest stretch of time that can be shown, in seconds.</summary>
    public required double LongestS { get; init; }

    /// <summary>Whether the audit holds a picture of the channel.</summary>
    public bool HasSheet { get; init; }

    /// <summary>Lines of the ledger that this was made from.</summary>
    public required int Seen { get; init; }

    /// <summary>The next undecided cell; null when nothing is left.</summary>
    public int? Next { get; init; }

    /// <summary>The cell of the same channel in the trial before; null when there is none, and in a blind review.</summary>
    public int? Earlier { get; init; }

    /// <summary>The cell of the same channel in the next trial.</summary>
    public int? Later { get; init; }

    /// <summary>The cell of the channel above in the same trial.</summary>
    public int? Above { get; init; }

    /// <summary>The cell of the channel below in the same trial.</summary>
    public int? Below { get; init; }
}
