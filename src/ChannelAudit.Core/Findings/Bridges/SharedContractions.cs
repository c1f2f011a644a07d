using System.Collections.Immutable;
using ChannelAudit.Signals.Statistics;
using ChannelAudit.Survey;

namespace ChannelAudit.Findings.Bridges;

/// <summary>Whether the contractions of two sites are those of a source that every other site sees too: chewing, swallowing, a remote muscle.</summary>
/// <remarks>
/// Engineering judgement: in the segments in which either of the two contracts, every third channel of their group rises tenfold, as a contraction does,
/// and correlates with both. Crosstalk of a tenth correlates as much but does not rise so.
/// </remarks>
internal static class SharedContractions
{
    private const double TimesRest = 10;
    private const double LeastRho = 0.6;

    /// <summary>Whether it is so.</summary>
    /// <param name="survey">The recording.</param>
    /// <param name="index">Position of the pair.</param>
    /// <param name="states">The pair's states, of the stretch in question.</param>
    public static bool Of(RecordingSurvey survey, int index, PairStates states)
    {
        PairSurvey pair = survey.Pairs[index];
        ImmutableArray<int> active = [.. states.ActiveA.Union(states.ActiveB)];
        int[] thirds =
        [
            .. Enumerable.Range(0, survey.Channels.Length)
                .Where(third => third != pair.A && third != pair.B && IsComparable(survey, pair.A, third) && IsComparable(survey, pair.B, third)),
        ];
        return !active.IsEmpty && thirds.Length > 0 && Array.TrueForAll(thirds, third => Sees(survey, pair.A, third, active) && Sees(survey, pair.B, third, active));
    }

    // Channels of other rates, or with other gaps, have other segments.
    private static bool IsComparable(RecordingSurvey survey, int channel, int third) =>
        survey.IndexOfPair(Math.Min(channel, third), Math.Max(channel, third)) >= 0 && PairOf(survey, channel, third).Table is not null && survey.Channels[channel].Segments.Count == PairOf(survey, channel, third).SegmentsA.Count;

    private static PairSurvey PairOf(RecordingSurvey survey, int channel, int third) =>
        survey.Pairs[survey.IndexOfPair(Math.Min(channel, third), Math.Max(channel, third))];

    private static bool Sees(RecordingSurvey survey, int channel, int third, ImmutableArray<int> segments)
    {
        PairSurvey pair = PairOf(survey, channel, third);
        SegmentTable table = third == pair.A ? pair.SegmentsA : pair.SegmentsB;
        QuietSegments? quiet = third == pair.A ? pair.QuietA : pair.QuietB;
        if (pair.Table is not { } shared || quiet?.RestPower is not { } rest || rest <= 0 || segments.Any(segment => segment >= table.Count))
        {
            return false;
        }

        return Median(segments.Select(segment => table.BandPower[segment] / rest)) >= TimesRest
            && Median(segments.Select(segment => Math.Abs((double)shared.Rho[segment]))) >= LeastRho;
    }

    private static double Median(IEnumerable<double> values) => Quantiles.MedianInPlace(values.ToArray());
}
