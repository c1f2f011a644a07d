using System.Collections.Immutable;

namespace ChannelAudit.Trends;

/// <summary>One measure of one subject over time.</summary>
/// <param name="Subject">The subject.</param>
/// <param name="Same">Others that cover the very same values (two electrodes that are always worn together): what is found may be any of them.</param>
/// <param name="Measure">The measure.</param>
/// <param name="Values">Positions of its values among those of the measure, in order of time.</param>
/// <param name="Sessions">How many recordings they come from.</param>
/// <param name="Weeks">How many weeks have a value.</param>
public sealed record TrendLine(
    TrendSubject Subject, ImmutableArray<TrendSubject> Same, TrendMeasure Measure, ImmutableArray<int> Values, int Sessions, int Weeks)
{
    /// <summary>With fewer recordings a line is not assessed.</summary>
    public const int LeastSessions = 24;

    /// <summary>With fewer weeks a line is not assessed.</summary>
    public const int LeastWeeks = 16;

    /// <summary>Whether there is enough of it to be looked at.</summary>
    public bool IsAssessed => Sessions >= LeastSessions && Weeks >= LeastWeeks;

    /// <summary>The lines of a measure: those with any value, subjects that cover the same values taken together under the broadest.</summary>
    public static ImmutableArray<TrendLine> Of(ImmutableArray<TrendSubject> subjects, TrendMeasure measure, ImmutableArray<TrendValue> values)
    {
        List<TrendLine> lines = [];
        Dictionary<string, int> known = new(StringComparer.Ordinal);
        foreach (TrendSubject subject in subjects)
        {
            ImmutableArray<int> own = [.. Enumerable.Range(0, values.Length).Where(i => values[i].IsOf(subject))];
            if (own.IsEmpty)
            {
                continue;
            }

            string key = string.Join(',', own);
            if (known.TryGetValue(key, out int place))
            {
                lines[place] = lines[place] with { Same = lines[place].Same.Add(subject) };
                continue;
            }

            known.Add(key, lines.Count);
            int sessions = own.Select(i => values[i].Session).Distinct().Count();
            int weeks = own.Select(i => values[i].Week).Distinct().Count();
            lines.Add(new TrendLine(subject, [], measure, own, sessions, weeks));
        }

        return [.. lines];
    }
}
