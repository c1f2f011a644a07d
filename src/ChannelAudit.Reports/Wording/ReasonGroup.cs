using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Wording;

/// <summary>All that a channel has against it for one reason.</summary>
/// <param name="Channel">The channel.</param>
/// <param name="Reason">The reason code.</param>
/// <param name="Worst">The worst finding; null when the reason is that nothing could be judged.</param>
/// <param name="Count">How many findings there are.</param>
/// <param name="Trials">The trials that carry the reason, ascending.</param>
public sealed record ReasonGroup(ChannelResult Channel, string Reason, Finding? Worst, int Count, ImmutableArray<int> Trials)
{
    /// <summary>The groups of a channel: in the order of its reasons, then reasons that only trials have, by their worst finding.</summary>
    public static ImmutableArray<ReasonGroup> Of(ChannelResult channel)
    {
        ILookup<string, Finding> findings = channel.Findings.Concat(channel.Cells.SelectMany(cell => cell.Findings))
            .ToLookup(finding => finding.Reason, StringComparer.Ordinal);
        ILookup<string, int> trials = channel.Cells.SelectMany(cell => cell.Reasons.Distinct(StringComparer.Ordinal).Select(reason => (Reason: reason, cell.Trial)))
            .ToLookup(one => one.Reason, one => one.Trial, StringComparer.Ordinal);
        return
        [
            .. channel.Reasons.Concat(findings.Select(group => group.Key)).Concat(trials.Select(group => group.Key))
                .Distinct(StringComparer.Ordinal)
                .Select(reason => new ReasonGroup(channel, reason, ReasonPhrase.Worst(findings[reason]), findings[reason].Count(), [.. trials[reason]]))
                .OrderBy(group => Rank(channel, group.Reason))
                .ThenByDescending(group => group.Worst?.Grade ?? Grade.Pass)
                .ThenBy(group => group.Reason, StringComparer.Ordinal),
        ];
    }

    /// <summary>Which trials have it, in words: <c>12 of 360: 3 to 14</c>.</summary>
    public string TrialWords() => Trials.Length switch
    {
        0 => "none of its own",
        1 => $"1 of {Channel.Cells.Length.Plain()}: {Trials[0].Plain()}",
        _ when Trials.Length == Channel.Cells.Length => $"all {Trials.Length.Plain()}",
        _ => $"{Trials.Length.Plain()} of {Channel.Cells.Length.Plain()}: {TrialList.Of(Trials)}",
    };

    private static int Rank(ChannelResult channel, string reason)
    {
        int place = channel.Reasons.IndexOf(reason);
        return place < 0 ? int.MaxValue : place;
    }
}
