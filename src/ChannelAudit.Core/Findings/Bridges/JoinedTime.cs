using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Bridges;

/// <summary>From when to when two sites are joined, second by second; spans of 24 s only say that they are.</summary>
internal static class JoinedTime
{
    /// <summary>The size of the correlation that joined seconds and trials have at least.</summary>
    public const double LeastRho = 0.60;

    /// <summary>The weaker gain they have at least: between the most that crosstalk brings (a quarter is published for the face) and the half that joined sites share.</summary>
    public const double LeastGain = 0.40;

    // Less than joined sites mostly show, and more than crosstalk of a tenth does: gel of a higher resistance than the contacts.
    private const double DoubtfulRho = 0.40;
    private const double DoubtfulGain = 0.25;

    // Three of five neighbouring seconds, so that one odd second neither begins nor ends it.
    private const int Around = 2;

    /// <summary>What a trial's own numbers say where a bridge is certain from the recording.</summary>
    public static Grade GradeOf(double rho, double gainAb, double gainBa) =>
        IsJoined(rho, gainAb, gainBa) ? Grade.Reject
        : Math.Abs(rho) >= DoubtfulRho && Math.Min(Math.Abs(gainAb), Math.Abs(gainBa)) >= DoubtfulGain ? Grade.Questionable
        : Grade.Pass;

    /// <summary>Whether numbers are those of joined sites, and not of a contraction seen through tissue.</summary>
    public static bool IsJoined(double rho, double gainAb, double gainBa) =>
        Math.Abs(rho) >= LeastRho && Math.Min(Math.Abs(gainAb), Math.Abs(gainBa)) >= LeastGain;

    /// <summary>The first and the last joined second that touch some stretch of time; null when there is none.</summary>
    /// <param name="pair">The pair.</param>
    /// <param name="fromS">Start of the stretch.</param>
    /// <param name="toS">Its end.</param>
    /// <param name="endS">End of the recording.</param>
    public static (double FromS, double ToS)? Within(PairSurvey pair, double fromS, double toS, double endS)
    {
        double rate = pair.ChannelA.Rate.Value;
        int[] joined = [.. Enumerable.Range(0, pair.SegmentsA.Count).Where(i => IsJoinedAround(pair, i))];
        double[] middles =
        [
            .. joined.Select(i => (pair.SegmentsA.Starts[i] / rate) + 0.5).Where(middle => middle >= fromS && middle <= toS),
        ];
        if (middles.Length == 0)
        {
            return null;
        }

        // The first and the last second of a recording have no middle nearer to its ends.
        double first = middles[0] <= 0.5 + (0.5 * Around) ? 0 : middles[0];
        double last = middles[^1] >= endS - 0.5 - (0.5 * Around) - 0.5 ? endS : middles[^1];
        return (first, last);
    }

    private static bool IsJoinedAround(PairSurvey pair, int segment)
    {
        int from = Math.Max(0, segment - Around);
        int to = Math.Min(pair.SegmentsA.Count - 1, segment + Around);
        int joined = Enumerable.Range(from, to - from + 1).Count(i => IsJoined(pair.Table!.Rho[i], pair.Table.GainAb[i], pair.Table.GainBa[i]));
        return IsJoined(pair.Table!.Rho[segment], pair.Table.GainAb[segment], pair.Table.GainBa[segment]) && 2 * joined > to - from + 1;
    }
}
