using System.Collections.Immutable;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Digests;

/// <summary>A channel in a line.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Verdict">The final verdict.</param>
/// <param name="Reasons">The codes of its reasons, worst first.</param>
/// <param name="Trials">Its trials by final verdict.</param>
public sealed record ChannelDigest(string Name, Grade Verdict, ImmutableArray<string> Reasons, VerdictCounts Trials)
{
    /// <summary>Every reason that it or one of its trials has: its own worst first, then those of trials alone, the commonest first; empty of a run
    /// that an earlier version wrote.</summary>
    public ImmutableArray<ReasonTrials> ByReason { get; init; } = [];

    /// <summary>The computed verdict.</summary>
    public Grade Computed { get; init; } = Verdict;

    /// <summary>Its trials by computed verdict.</summary>
    public VerdictCounts ComputedTrials { get; init; } = Trials;

    /// <summary>Whether a decision is in force about it or one of its trials.</summary>
    public bool IsDecided { get; init; }

    /// <summary>Whether something could not be judged over the whole recording; never shown as good.</summary>
    public bool HasGaps { get; init; }

    /// <summary>The digest of a channel.</summary>
    public static ChannelDigest Of(RecordingResult recording, ChannelResult channel) =>
        new(channel.Name, FinalVerdict.OfChannel(recording, channel), channel.Reasons, VerdictCounts.OfTrials(recording, channel))
        {
            ByReason = Counted(channel),
            HasGaps = !channel.NotAssessed.IsEmpty,
            Computed = channel.Verdict,
            ComputedTrials = VerdictCounts.Of(channel.Cells.Select(cell => cell.Verdict)),
            IsDecided = FinalVerdict.DecisionOn(recording, channel) is not null || channel.Cells.Any(cell => FinalVerdict.DecisionOn(recording, channel, cell) is not null),
        };

    private static ImmutableArray<ReasonTrials> Counted(ChannelResult channel)
    {
        ReasonTrials[] inTrials =
        [
            .. channel.Cells.SelectMany(cell => cell.Reasons.Distinct(StringComparer.Ordinal))
                .GroupBy(reason => reason, StringComparer.Ordinal)
                .Select(group => new ReasonTrials(group.Key, group.Count(), ReasonNotes.Of(channel, group.Key)))
                .OrderByDescending(reason => reason.Trials)
                .ThenBy(reason => reason.Reason, StringComparer.Ordinal),
        ];
        Dictionary<string, ReasonTrials> byCode = inTrials.ToDictionary(reason => reason.Reason, StringComparer.Ordinal);
        return
        [
            .. channel.Reasons.Select(reason => byCode.GetValueOrDefault(reason) ?? new ReasonTrials(reason, 0, ReasonNotes.Of(channel, reason))),
            .. inTrials.Where(reason => !channel.Reasons.Contains(reason.Reason, StringComparer.Ordinal)),
        ];
    }
}
