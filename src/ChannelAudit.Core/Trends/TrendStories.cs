using System.Collections.Immutable;

namespace ChannelAudit.Trends;

/// <summary>Puts changes together that are one thing that happened.</summary>
internal static class TrendStories
{
    /// <summary>The stories: those of their own first, each in order of sureness.</summary>
    public static ImmutableArray<TrendStory> Of(ImmutableArray<TrendFinding> findings)
    {
        TrendStory[] grouped = [.. Grouped(findings).OrderBy(story => story.Findings.Min(finding => finding.CorrectedP)).ThenBy(story => story.Subject.By)];
        int?[] whole = [.. grouped.Select((story, i) => Whole(grouped, i))];
        int[] order = [.. Enumerable.Range(0, grouped.Length).OrderBy(i => whole[i] is null ? 0 : 1)];
        return [.. order.Select(i => grouped[i] with { PartOf = whole[i] is { } broader ? Array.IndexOf(order, broader) : null })];
    }

    private static IEnumerable<TrendStory> Grouped(ImmutableArray<TrendFinding> findings)
    {
        List<List<TrendFinding>> groups = [];
        foreach (TrendFinding finding in findings.OrderBy(one => one.CorrectedP).ThenBy(one => one.P))
        {
            List<TrendFinding>? home = groups.Find(group => group[0].Line.Subject == finding.Line.Subject && group.Exists(one => Agree(one, finding)));
            if (home is null)
            {
                groups.Add([finding]);
            }
            else
            {
                home.Add(finding);
            }
        }

        return groups.Select(group => new TrendStory([.. group.OrderBy(finding => finding.Measure == TrendMeasure.NotPassed)], null));
    }

    private static bool Agree(TrendFinding one, TrendFinding other) =>
        one.IsBeside(other) && (one.IsWorse is null || other.IsWorse is null || one.IsWorse == other.IsWorse);

    // The first broader story that says all that it says: the same measure at the same time; what verdicts do follows from any measure.
    private static int? Whole(TrendStory[] stories, int place)
    {
        for (int i = 0; i < stories.Length; i++)
        {
            if (i != place && IsInside(stories[place].Findings[0].Line, stories[i].Findings[0].Line) && stories[place].Findings.All(one => stories[i].Findings.Any(other => Says(other, one))))
            {
                return i;
            }
        }

        return null;
    }

    private static bool Says(TrendFinding broad, TrendFinding narrow) =>
        Agree(broad, narrow) && (broad.Measure == narrow.Measure || narrow.Measure == TrendMeasure.NotPassed);

    // Of two that cross (a site, an amplifier) the broader kind is the whole.
    private static bool IsInside(TrendLine narrow, TrendLine broad) => broad.Subject.By < narrow.Subject.By
        && (broad.Subject.By == TrendBy.Archive || string.Equals(broad.Subject.Lab, narrow.Subject.Lab, StringComparison.Ordinal));
}
