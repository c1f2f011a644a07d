using System.Collections.Immutable;
using ChannelAudit.Measures;

namespace ChannelAudit.Survey;

/// <summary>Which segments of a pair are rest, and which are contractions of the one or the other.</summary>
/// <remarks>
/// Rest: both channels quiet and free of low-frequency artefact. A contraction of A: its band power is at least 10 times its rest, and it
/// rose at least as much as B, or nearly so; of B likewise. What is equally strong at both counts for both. When the two are so alike that one of them hardly ever leads, every contraction counts for both.
/// </remarks>
public sealed record PairStates
{
    private const double TimesRest = 10;
    private const double LowRmsUv = 10;
    private const int LeastLed = 3;

    // Two that rise alike: nobody can say who leads.
    private const double Alike = 1.25;

    /// <summary>Segments at rest, ascending.</summary>
    public required ImmutableArray<int> Rest { get; init; }

    /// <summary>Segments with a contraction of the first channel.</summary>
    public required ImmutableArray<int> ActiveA { get; init; }

    /// <summary>Segments with a contraction of the second channel.</summary>
    public required ImmutableArray<int> ActiveB { get; init; }

    /// <summary>Sorts the segments of a pair.</summary>
    public static PairStates Of(PairSurvey pair)
    {
        ImmutableArray<int>.Builder rest = ImmutableArray.CreateBuilder<int>();
        ImmutableArray<int>.Builder activeA = ImmutableArray.CreateBuilder<int>();
        ImmutableArray<int>.Builder activeB = ImmutableArray.CreateBuilder<int>();
        bool anyAlone = false;
        for (int i = 0; i < pair.SegmentsA.Count; i++)
        {
            if (IsQuiet(pair.QuietA, i) && IsQuiet(pair.QuietB, i))
            {
                if (!Moves(pair.SegmentsA, i, pair.ChannelA.IsMicrovolts) && !Moves(pair.SegmentsB, i, pair.ChannelB.IsMicrovolts))
                {
                    rest.Add(i);
                }

                continue;
            }

            double riseA = Rise(pair.SegmentsA, pair.QuietA, i);
            double riseB = Rise(pair.SegmentsB, pair.QuietB, i);
            bool areAlike = AreAlike(pair.SegmentsA.BandPower[i], pair.SegmentsB.BandPower[i]) && Math.Max(riseA, riseB) >= TimesRest;
            if ((riseA >= TimesRest && Alike * riseA >= riseB) || areAlike)
            {
                activeA.Add(i);
            }

            if ((riseB >= TimesRest && Alike * riseB >= riseA) || areAlike)
            {
                activeB.Add(i);
            }

            anyAlone |= riseA >= TimesRest ^ riseB >= TimesRest;
        }

        // Only where nobody can say whose contraction it is: mixed up, a third of each seen at the other would look like all of it.
        bool hardlyLeads = Math.Min(activeA.Count, activeB.Count) < LeastLed;
        if (!anyAlone && hardlyLeads && activeA.Count + activeB.Count > 0)
        {
            ImmutableArray<int> both = [.. activeA.Union(activeB).Order()];
            return new PairStates { Rest = rest.DrainToImmutable(), ActiveA = both, ActiveB = both };
        }

        return new PairStates
        {
            Rest = rest.DrainToImmutable(),
            ActiveA = activeA.DrainToImmutable(),
            ActiveB = activeB.DrainToImmutable(),
        };
    }

    /// <summary>The same of those segments only that start in a stretch of samples.</summary>
    /// <param name="starts">The first sample of every segment.</param>
    /// <param name="from">First sample of the stretch.</param>
    /// <param name="to">Last sample at which a segment may start.</param>
    public PairStates Between(IReadOnlyList<long> starts, long from, long to)
    {
        return new PairStates { Rest = Inside(Rest), ActiveA = Inside(ActiveA), ActiveB = Inside(ActiveB) };

        ImmutableArray<int> Inside(ImmutableArray<int> segments)
        {
            int first = FirstAfter(segments, starts, from - 1);
            int end = FirstAfter(segments, starts, to);
            return first < end ? segments[first..end] : [];
        }
    }

    // Spans are many and each holds few of the segments, which ascend with their starts.
    private static int FirstAfter(ImmutableArray<int> segments, IReadOnlyList<long> starts, long sample)
    {
        int low = 0;
        int high = segments.Length;
        while (low < high)
        {
            int middle = (low + high) >>> 1;
            (low, high) = starts[segments[middle]] > sample ? (low, middle) : (middle + 1, high);
        }

        return low;
    }

    // In power, and not over rest: a noisier contact raises the rest of one of two joined sites.
    private static bool AreAlike(double a, double b) => Alike * a >= b && Alike * b >= a;

    private static bool IsQuiet(QuietSegments? quiet, int segment) => quiet is not null && quiet.IsQuiet[segment];

    private static double Rise(SegmentTable table, QuietSegments? quiet, int segment) =>
        quiet?.RestPower is > 0 and double rest ? table.BandPower[segment] / rest : 0;

    /// <summary>Whether a segment shows motion: 2 to 15 Hz at 10 µV and above, and at least as strong as the muscle.</summary>
    private static bool Moves(SegmentTable table, int segment, bool hasUnit) =>
        table.LowPower[segment] >= table.BandPower[segment]
        && (!hasUnit || table.LowPower[segment] >= LowRmsUv * LowRmsUv);
}
