using System.Collections.Immutable;

namespace ChannelAudit.Trends;

/// <summary>What many recordings tell over time.</summary>
public sealed record TrendReport
{
    /// <summary>Recordings with a day, in order of time.</summary>
    public required ImmutableArray<TrendSession> Sessions { get; init; }

    /// <summary>How many recordings have no day, so that nothing over time can be said of them.</summary>
    public required int WithoutDay { get; init; }

    /// <summary>Everything that recordings are put together by.</summary>
    public required ImmutableArray<TrendSubject> Subjects { get; init; }

    /// <summary>All lines, assessed or not.</summary>
    public required ImmutableArray<TrendLine> Lines { get; init; }

    /// <summary>What changed, stories of their own first, each in order of sureness.</summary>
    public required ImmutableArray<TrendStory> Stories { get; init; }

    /// <summary>How many lines were looked at: what probabilities are corrected for.</summary>
    public int LookedAt => Lines.Count(line => line.IsAssessed);

    /// <summary>Looks through recordings.</summary>
    /// <param name="sessions">In any order.</param>
    /// <param name="cancellation">Checked for every line.</param>
    public static TrendReport Of(IEnumerable<TrendSession> sessions, CancellationToken cancellation)
    {
        TrendSession[] all = [.. sessions];
        ImmutableArray<TrendSession> dated = [.. all.Where(one => one.Day is not null).OrderBy(one => one.Day).ThenBy(one => one.Id, StringComparer.Ordinal)];
        ImmutableArray<TrendSubject> subjects = TrendSubjects.Of(dated);
        ImmutableArray<TrendSearch> searches = [.. TrendMeasure.All.Select(measure => new TrendSearch(subjects, measure, TrendValue.Of(dated, measure)))];
        return new TrendReport
        {
            Sessions = dated,
            WithoutDay = all.Length - dated.Length,
            Subjects = subjects,
            Lines = [.. searches.SelectMany(search => search.Lines)],
            Stories = TrendStories.Of(TrendSearch.Run(searches, cancellation)),
        };
    }
}
