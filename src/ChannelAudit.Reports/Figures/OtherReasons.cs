using System.Collections.Immutable;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Figures;

/// <summary>Faults of a recording that its title leaves out.</summary>
internal static class OtherReasons
{
    /// <summary>Some of them in words, those of rejects first; empty when the title says all.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="named">The reason that the title names, or null.</param>
    /// <param name="most">How many to name at most.</param>
    public static string Of(RecordingResult recording, string? named, int most)
    {
        ImmutableArray<string> others =
        [
            .. recording.Channels
                .SelectMany(Shown)
                .GroupBy(one => one.Reason, StringComparer.Ordinal)
                .Where(group => group.Key is not ReasonLetters.ManyBadTrials && !string.Equals(group.Key, named, StringComparison.Ordinal))
                .OrderByDescending(group => group.Max(one => one.Grade))
                .ThenBy(group => ReasonLetters.Rank(group.Key))
                .ThenBy(group => group.Key, StringComparer.Ordinal)
                .Select(group => group.Key),
        ];
        return others.IsEmpty ? string.Empty : $"also: {FigureText.Names(others.Take(most))}{(others.Length > most ? " and more" : string.Empty)}";
    }

    private static IEnumerable<(string Reason, Grade Grade)> Shown(ChannelResult channel) => channel.Findings
        .Concat(channel.Cells.SelectMany(cell => cell.Findings))
        .Select(finding => (finding.Reason, finding.Grade))
        .Concat(channel.Reasons.Select(reason => (reason, channel.Verdict)))
        .Concat(channel.Cells.SelectMany(cell => cell.Reasons.Select(reason => (reason, cell.Verdict))))
        .Where(one => one.Item2 > Grade.Pass);
}
