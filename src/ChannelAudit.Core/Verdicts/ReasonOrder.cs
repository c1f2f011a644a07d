using System.Collections.Immutable;
using ChannelAudit.Findings;

namespace ChannelAudit.Verdicts;

/// <summary>Lists reasons worst first: by grade, then in the fixed order of the codes.</summary>
internal static class ReasonOrder
{
    /// <summary>Each reason once, with its worst grade deciding its place.</summary>
    public static ImmutableArray<string> Of(IReadOnlyCollection<(string Reason, Grade Grade)> found) => found.Count == 0 ? [] :
    [
        .. found
            .Where(item => item.Grade != Grade.Pass)
            .GroupBy(item => item.Reason, StringComparer.Ordinal)
            .Select(group => (Reason: group.Key, Grade: group.Max(item => item.Grade)))
            .OrderByDescending(item => item.Grade)
            .ThenBy(item => ReasonCode.All.IndexOf(item.Reason))
            .Select(item => item.Reason),
    ];

    /// <summary>What was not assessed, each reason once, in the fixed order of the codes.</summary>
    public static ImmutableArray<NotAssessed> Of(IReadOnlyCollection<NotAssessed> open) => open.Count == 0 ? [] :
    [
        .. open
            .GroupBy(item => item.Reason, StringComparer.Ordinal)
            .Select(group => group.First())
            .OrderBy(item => ReasonCode.All.IndexOf(item.Reason)),
    ];
}
