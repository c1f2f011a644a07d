using System.Collections.Immutable;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Signals.Trends;

namespace ChannelAudit.Trends;

/// <summary>Looks for changes in all lines of one measure, and finds for each the thing that explains most.</summary>
/// <remarks>
/// <para>Values are taken about the level of their site in their lab. A line has one value a recording. <see cref="ChangeTest"/> gives each line its probability, weeks being
/// the blocks, and <see cref="HolmCorrection"/> corrects for all lines of all measures.</para>
/// <para>What changes in a lab shows in each of its electrodes, and what changes in an electrode shows a little in its site and its lab. That something changed is said by a line that
/// stands out after the correction; what changed is the line, among those that share values with it and would stand out alone, whose change explains most of all the values' squares.
/// Its course is then taken out of its values, week by week, and the others are looked at again. So a cause that many share is told once, and no neighbour is blamed.</para>
/// </remarks>
public sealed class TrendSearch
{
    /// <summary>The chance that anything at all is found where nothing changes is at most this.</summary>
    public const double Level = 0.01;

    private const int MostFindings = 100;

    // Values further out than this many spreads count as much as one that is this far: one wild value explains nothing.
    private const double WildFrom = 8;

    private readonly TrendMeasure _measure;
    private readonly ImmutableArray<TrendValue> _values;
    private readonly double[] _left;
    private readonly double[] _plainLeft;
    private readonly double[] _p;
    private readonly ChangeTestResult[] _tests;
    private readonly HashSet<int> _settled = [];

    /// <summary>Prepares the lines of a measure.</summary>
    public TrendSearch(ImmutableArray<TrendSubject> subjects, TrendMeasure measure, ImmutableArray<TrendValue> values)
    {
        _measure = measure;
        _values = values;
        _plainLeft = AboutTheirSite(values, measure, double.PositiveInfinity);
        _left = AboutTheirSite(values, measure, measure.Scale == TrendScale.Share ? double.PositiveInfinity : WildFrom);
        Lines = TrendLine.Of(subjects, measure, values);
        _tests = new ChangeTestResult[Lines.Length];
        _p = new double[Lines.Length];
    }

    /// <summary>The lines, assessed or not.</summary>
    public ImmutableArray<TrendLine> Lines { get; }

    /// <summary>Finds all changes, one after the other.</summary>
    public static ImmutableArray<TrendFinding> Run(ImmutableArray<TrendSearch> searches, CancellationToken cancellation)
    {
        ImmutableArray<TrendFinding>.Builder findings = ImmutableArray.CreateBuilder<TrendFinding>();
        foreach (TrendSearch search in searches)
        {
            search.TestAll(cancellation);
        }

        while (findings.Count < MostFindings && Next(searches) is { } found)
        {
            cancellation.ThrowIfCancellationRequested();

            // What explains most and is too small to be told is taken out all the same: no part of it may seem larger by chance.
            if (found.Finding.Matters)
            {
                findings.Add(found.Finding);
            }

            found.Search.TakeOut(found.Place);
            found.Search.TestAll(cancellation);
        }

        return findings.ToImmutable();
    }

    private static (TrendSearch Search, int Place, TrendFinding Finding)? Next(ImmutableArray<TrendSearch> searches)
    {
        double[] corrected = HolmCorrection.Of([.. searches.SelectMany(search => search._p.Where((_, i) => search.Lines[i].IsAssessed))]);
        int at = 0;
        foreach (TrendSearch search in searches)
        {
            double[] own = [.. search.Lines.Select(line => line.IsAssessed ? corrected[at++] : 1)];
            if (search.Most(i => own[i] <= Level) is { } sure)
            {
                HashSet<int> values = [.. search.Lines[sure.Place].Values];
                var cause = search.Most(i => search._p[i] <= Level && search.Lines[i].Values.Any(values.Contains)) ?? sure;
                return (search, cause.Place, search.Finding(cause.Place, cause.Shape, Math.Min(own[sure.Place], own[cause.Place])));
            }
        }

        return null;
    }

    // Of some lines the one whose change explains most.
    private (int Place, ChangeShape Shape)? Most(Func<int, bool> isMeant)
    {
        (int Place, ChangeShape Shape)? most = null;
        for (int i = 0; i < Lines.Length; i++)
        {
            if (Lines[i].IsAssessed && !_settled.Contains(i) && isMeant(i) && Fit(i) is { } shape
                && (most is null || shape.Explained > most.Value.Shape.Explained))
            {
                most = (i, shape);
            }
        }

        return most;
    }

    private void TestAll(CancellationToken cancellation)
    {
        for (int i = 0; i < Lines.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (Lines[i].IsAssessed)
            {
                (double[] values, int[] weeks, _) = BySession(Lines[i], _left);
                _tests[i] = ChangeTest.Of(values, weeks);
                _p[i] = _tests[i].P;
            }
        }
    }

    // A settled line stays among those that were looked at, with whatever probability is left.
    private void TakeOut(int place)
    {
        _settled.Add(place);
        foreach (IGrouping<int, int> week in Lines[place].Values.GroupBy(i => _values[i].Week))
        {
            double mean = week.Average(i => _left[i]);
            double plainMean = week.Average(i => _plainLeft[i]);
            foreach (int i in week)
            {
                _left[i] -= mean;
                _plainLeft[i] -= plainMean;
            }
        }
    }

    private ChangeShape Fit(int place)
    {
        var weeks = ByWeek(Lines[place], places => places.Average(i => _left[i]));
        return ChangeShape.Of([.. weeks.Select(week => (double)week.Week)], [.. weeks.Select(week => week.Value)], [.. weeks.Select(week => (double)week.Count)]);
    }

    private TrendFinding Finding(int place, ChangeShape shape, double corrected)
    {
        TrendLine line = Lines[place];
        double[] plain = [.. _values.Select(value => value.On(_measure.Scale))];
        var weeks = ByWeek(line, places => Middle(places, plain));
        int to = shape.Kind == ChangeKind.Episode ? shape.To : weeks.Count;
        ImmutableArray<bool> isChanged = [.. weeks.Select((_, i) => i >= shape.From && i < to)];
        HashSet<int> changed = [.. weeks.Where((_, i) => isChanged[i]).Select(week => week.Week)];
        int[] without = [.. line.Values.Where(i => !changed.Contains(_values[i].Week))];
        double before = Middle(without, plain);
        bool isOver = shape.Kind == ChangeKind.Episode || (shape.Kind == ChangeKind.Drift && shape.To < weeks.Count - ChangeShape.LeastBlocks);
        return new TrendFinding
        {
            Line = line,
            Kind = shape.Kind,
            From = Monday(weeks[shape.From].Week),
            To = isOver ? Monday(weeks[shape.To].Week) : null,
            Last = _values[line.Values[^1]].Day,
            Before = Raw(before),
            After = Raw(before + OwnChange(line, shape, weeks, without)),
            P = _p[place],
            CorrectedP = corrected,
            Correlation = _tests[place].Correlation,
            Others = Others(line, plain),
            Chart = TrendChart.Of(
                [.. weeks.Select(week => Monday(week.Week))],
                [.. weeks.Select(week => week.Value)],
                [.. weeks.Select(week => week.Count)],
                isChanged,
                shape.Change > 0,
                LeastSpread(before, line)),
        };
    }

    // Of what no broader cause explains, in the weeks of the new level; of a drift that goes on, its last quarter.
    private double OwnChange(TrendLine line, ChangeShape shape, List<(int Week, double Value, int Count)> weeks, int[] without)
    {
        int end = shape.Kind == ChangeKind.Episode ? shape.To : weeks.Count;
        int start = shape.Kind == ChangeKind.Episode ? shape.From : Math.Min(shape.To, weeks.Count - Math.Max(ChangeShape.LeastBlocks, (weeks.Count - shape.From) / 4));
        HashSet<int> settled = [.. weeks[start..end].Select(week => week.Week)];
        double change = Middle([.. line.Values.Where(i => settled.Contains(_values[i].Week))], _plainLeft) - Middle(without, _plainLeft);
        return Math.Sign(change) == Math.Sign(shape.Change) ? change : shape.Change;
    }

    // One recording in another state must not look like the state of its week.
    private double Middle(int[] places, double[] values)
    {
        double[] own = [.. places.Select(i => values[i])];
        return _measure.Scale == TrendScale.Share ? own.Average() : Quantiles.Median(own);
    }

    private ImmutableArray<(DateOnly Week, double Middle)> Others(TrendLine line, double[] plain)
    {
        HashSet<int> own = [.. line.Values];
        HashSet<string> sites = [.. line.Values.Select(i => _values[i].Site)];
        TrendBy by = line.Subject.By;
        return
        [
            .. Enumerable.Range(0, _values.Length)
                .Where(i => !own.Contains(i)
                    && (by is TrendBy.Lab || string.Equals(_values[i].Lab, line.Subject.Lab, StringComparison.Ordinal))
                    && (by is not TrendBy.Electrode || sites.Contains(_values[i].Site)))
                .GroupBy(i => _values[i].Week)
                .Select(week => (Monday(week.Key), Middle([.. week], plain))),
        ];
    }

    // Weeks without a single bad channel have no spread; that of the count, with one in all at least, is the smallest there can be.
    private double LeastSpread(double share, TrendLine line)
    {
        if (_measure.Scale != TrendScale.Share)
        {
            return 1e-6;
        }

        double least = Math.Clamp(share, 1.0 / line.Values.Length, 1 - (1.0 / line.Values.Length));
        return Math.Sqrt(least * (1 - least) * line.Weeks / line.Values.Length);
    }

    private double Raw(double value) => _measure.Scale switch
    {
        TrendScale.Level => Math.Exp(value),
        TrendScale.Share => Math.Clamp(value, 0, 1),
        _ => value,
    };

    private static DateOnly Monday(int week) => DateOnly.FromDayNumber(7 * week);

    private (double[] Values, int[] Weeks, int[] Counts) BySession(TrendLine line, double[] left)
    {
        var sessions = line.Values.GroupBy(i => _values[i].Session).ToArray();
        return
        (
            [.. sessions.Select(session => session.Average(i => left[i]))],
            [.. sessions.Select(session => _values[session.First()].Week)],
            [.. sessions.Select(session => session.Count())]
        );
    }

    private List<(int Week, double Value, int Count)> ByWeek(TrendLine line, Func<int[], double> value) =>
        [.. line.Values.GroupBy(i => _values[i].Week).Select(week => (week.Key, value([.. week]), week.Count()))];

    private static double[] AboutTheirSite(ImmutableArray<TrendValue> values, TrendMeasure measure, double wildFrom)
    {
        double[] left = [.. values.Select(value => value.On(measure.Scale))];
        foreach (IGrouping<(string? Lab, string Site), int> site in Enumerable.Range(0, left.Length).GroupBy(i => (values[i].Lab, values[i].Site)))
        {
            double[] own = [.. site.Select(i => left[i])];
            double level = measure.Scale == TrendScale.Share ? own.Average() : Quantiles.Median(own);
            double wild = double.IsFinite(wildFrom) ? wildFrom * RobustScale.Sigma(own) : 0;
            foreach (int i in site)
            {
                left[i] = wild > 0 ? Math.Clamp(left[i] - level, -wild, wild) : left[i] - level;
            }
        }

        return left;
    }
}
