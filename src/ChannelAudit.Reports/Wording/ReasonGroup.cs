using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Wording;

/// <summary>All that a channel has against it for one reason.</summary>
/// <param name="Channel">The channel.</param>
/// <param name="Reason">The reason code.</param>
/// <param name="Worst">The worst finding.</param>
/// <param name="Count">How many findings there are.</param>
/// <param name="Trials">The trials that carry the reason, ascending.</param>
public sealed record ReasonGroup(ChannelResult Channel, string Reason, Finding Worst, int Count, ImmutableArray<int> Trials)
{
    /// <summary>The groups of a channel: in the order of its reasons, then reasons that only trials have, by their worst finding.</summary>
    public static ImmutableArray<ReasonGroup> Of(ChannelResult channel) =>
    [
        .. channel.Findings.Concat(channel.Cells.SelectMany(cell => cell.Findings))
            .GroupBy(finding => finding.Reason, StringComparer.Ordinal)
            .Select(group => new ReasonGroup(
                channel,
                group.Key,
                ReasonPhrase.Worst(group)!,
                group.Count(),
                [.. channel.Cells.Where(cell => cell.Reasons.Contains(group.Key, StringComparer.Ordinal)).Select(cell => cell.Trial)]))
            .OrderBy(group => Rank(channel, group.Reason))
            .ThenByDescending(group => group.Worst.Grade)
            .ThenBy(group => group.Reason, StringComparer.Ordinal),
    ];

    private static int Rank(ChannelResult channel, string reason)
    {
        int place = channel.Reasons.IndexOf(reason);
        return place < 0 ? int.MaxValue : place;
    }
}
