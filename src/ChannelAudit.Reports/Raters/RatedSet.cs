using System.Collections.Immutable;
using ChannelAudit.Reports.Reconciling;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Raters;

/// <summary>Labels of one kind of thing against the criteria and each other.</summary>
public sealed class RatedSet
{
    /// <summary>What tables call the computed verdicts; no rater's name, since those stand there as given.</summary>
    public const string Criteria = "(criteria)";

    /// <summary>What tables call the people together: the middle of their labels.</summary>
    public const string People = "(people)";

    /// <summary>So many rejects, and so many others, it takes before a limit is named that would agree best; engineering judgement.</summary>
    public const int LeastLabels = 20;

    private const int Grades = 3;

    /// <summary>Holds labels against the criteria.</summary>
    /// <param name="kind">What they are about.</param>
    /// <param name="raters">Names of the raters, in the order of each thing's labels.</param>
    /// <param name="things">What they labelled.</param>
    internal RatedSet(RatedKind kind, ImmutableArray<string> raters, ImmutableArray<RatedThing> things)
    {
        Kind = kind;
        Count = things.Length;
        Recordings = things.Select(thing => thing.Recording).Distinct(StringComparer.Ordinal).Count();
        Undecided = things.Count(thing => thing.People is null);
        int[] present = [.. Enumerable.Range(0, raters.Length).Where(rater => things.Any(thing => thing.Labels[rater] is not null))];
        Raters = [.. present.Select(rater => raters[rater])];
        Pairs = [.. Against(present, raters, things), .. Among(present, raters, things)];
        Detections =
        [
            .. present.SelectMany(rater => Detect(raters[rater], things, thing => thing.Labels[rater])),
            .. present.Length > 1 ? Detect(People, things, thing => thing.People) : [],
        ];
        Curves = MeasureCurves.Of(things);
    }

    /// <summary>What the labels are about.</summary>
    public RatedKind Kind { get; }

    /// <summary>Things with a label.</summary>
    public int Count { get; }

    /// <summary>Recordings that they are of.</summary>
    public int Recordings { get; }

    /// <summary>Things of which people together say nothing: two labels share the middle and differ.</summary>
    public int Undecided { get; }

    /// <summary>Raters who labelled any of them.</summary>
    public ImmutableArray<string> Raters { get; }

    /// <summary>The criteria with each rater, then the raters with each other.</summary>
    public ImmutableArray<RaterPair> Pairs { get; }

    /// <summary>The criteria against each rater and, of several, against people together.</summary>
    public ImmutableArray<RaterDetection> Detections { get; }

    /// <summary>Each measure alone, the largest area first.</summary>
    public ImmutableArray<MeasureAgainstPeople> Curves { get; }

    private static IEnumerable<RaterPair> Against(int[] present, ImmutableArray<string> raters, ImmutableArray<RatedThing> things) =>
        present.Select(rater => Pair(Criteria, raters[rater], things, thing => thing.Computed, thing => thing.Labels[rater]));

    private static IEnumerable<RaterPair> Among(int[] present, ImmutableArray<string> raters, ImmutableArray<RatedThing> things) =>
        present.SelectMany((a, place) => present.Skip(place + 1).Select(b =>
            Pair(raters[a], raters[b], things, thing => thing.Labels[a], thing => thing.Labels[b])));

    private static RaterPair Pair(string a, string b, ImmutableArray<RatedThing> things, Func<RatedThing, Grade?> ofA, Func<RatedThing, Grade?> ofB)
    {
        TwoWayTable table = new(Grades);
        foreach (RatedThing thing in things)
        {
            if (ofA(thing) is { } first && ofB(thing) is { } second)
            {
                table.Add((int)first, (int)second);
            }
        }

        return new RaterPair(a, b, table);
    }

    private static IEnumerable<RaterDetection> Detect(string against, ImmutableArray<RatedThing> things, Func<RatedThing, Grade?> label) =>
        new[] { (Grade.Reject, Grade.Reject), (Grade.Questionable, Grade.Reject), (Grade.Questionable, Grade.Questionable) }
            .Select(from => new RaterDetection(against, from.Item1, from.Item2, Counts(things, label, from.Item1, from.Item2)));

    private static DetectionCounts Counts(ImmutableArray<RatedThing> things, Func<RatedThing, Grade?> label, Grade calledFrom, Grade trueFrom)
    {
        int[] counts = new int[4];
        foreach (RatedThing thing in things.Where(thing => label(thing) is not null))
        {
            counts[(label(thing) >= trueFrom ? 0 : 2) + (thing.Computed >= calledFrom ? 0 : 1)]++;
        }

        return new DetectionCounts(counts[0], counts[1], counts[2], counts[3]);
    }
}
