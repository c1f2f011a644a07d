using System.Collections.Immutable;
using ChannelAudit.Results;
using ChannelAudit.Setup;
using ChannelAudit.Survey;

namespace ChannelAudit.Findings.Bridges;

/// <summary>Why a bridge could not be judged on a channel: its adjacent sites first, all other channels where the setup names none.</summary>
internal static class BridgeGap
{
    /// <summary>The cause, or null when every pair that matters was judged.</summary>
    public static string? Of(int index, RecordingSurvey survey, ImmutableArray<PairJudgement> pairs, StudySetup setup)
    {
        if (pairs.IsEmpty)
        {
            return survey.Channels.Length > 1 ? "the setup names no site beside it" : "only one channel";
        }

        string name = survey.Channels[index].Name;
        ImmutableArray<string> adjacent = Adjacent(name, setup);
        foreach (PairJudgement pair in pairs)
        {
            string other = survey.Channels[pair.A == index ? pair.B : pair.A].Name;
            if (pair.Evidence.NotAssessed is { } cause && (adjacent.IsEmpty || adjacent.Contains(other, StringComparer.Ordinal)))
            {
                return $"{name} and {other}: {cause}";
            }
        }

        return null;
    }

    /// <summary>The pairs that matter and were not judged, each with the cause.</summary>
    /// <param name="pairs">All pairs of a recording.</param>
    /// <param name="setup">Names adjacent sites.</param>
    public static IEnumerable<(string One, string Other, string Cause)> Of(ImmutableArray<PairResult> pairs, StudySetup setup) => pairs
        .Where(pair => pair.Evidence.NotAssessed is not null && (Matters(pair.ChannelA, pair.ChannelB, setup) || Matters(pair.ChannelB, pair.ChannelA, setup)))
        .Select(pair => (pair.ChannelA, pair.ChannelB, pair.Evidence.NotAssessed!));

    private static bool Matters(string name, string other, StudySetup setup) =>
        Adjacent(name, setup) is { IsEmpty: var isEmpty } adjacent && (isEmpty || adjacent.Contains(other, StringComparer.Ordinal));

    private static ImmutableArray<string> Adjacent(string name, StudySetup setup) =>
    [
        .. setup.Sites.Where(site => string.Equals(site.Name, name, StringComparison.Ordinal)).SelectMany(site => site.Adjacent)
            .Where(near => !string.Equals(near, SiteSetup.Ground, StringComparison.Ordinal)),
        .. setup.Sites.Where(site => site.Adjacent.Contains(name, StringComparer.Ordinal)).Select(site => site.Name),
    ];
}
