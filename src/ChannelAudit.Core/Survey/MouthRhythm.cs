using System.Collections.Immutable;

namespace ChannelAudit.Survey;

/// <summary>Bursts that repeat at the rhythm of chewing or speech, in the envelope of a channel at the mouth.</summary>
/// <remarks>
/// A burst rises to three times rest and to twice the valley before it, lasts 60 ms and more, and ends when the envelope falls below half of its peak; six in a row, each 1/6 to 1.4 s
/// behind the one before (0.7 to 6 a second), are a rhythm. Steady activity scatters by 15 % in this envelope, a smile is one burst, motor units and blinks leave nothing in it.
/// Engineering judgement (docs/information.md): mastication goes at about 0.7 to 2.5 a second, syllables faster.
/// </remarks>
/// <param name="Bursts">How many, over all stretches.</param>
/// <param name="BurstsPerS">Bursts a second, median.</param>
/// <param name="Stretches">From the first to the last burst of each row, in seconds.</param>
public sealed record MouthRhythm(int Bursts, double BurstsPerS, ImmutableArray<(double FromS, double ToS)> Stretches)
{
    /// <summary>Below this many bursts a second it is chewing, from there on speech.</summary>
    public const double SpeechFromPerS = 2.5;

    private const double RiseTimesRest = 3;
    private const double RiseTimesValley = 2;
    private const double FallToPeak = 0.5;
    private const int LeastWidth = 3;
    private const int LeastBursts = 6;
    private const double LongestGapS = 1.4;
    private const double ShortestGapS = 1 / 6.0;
    private const double BesideTimes = 1.5;

    /// <summary>The rhythm of a channel, or null.</summary>
    /// <param name="envelope">Its envelope.</param>
    /// <param name="elsewhere">The envelope of a site away from the mouth, which must rise less; null when there is none.</param>
    /// <param name="isAsked">Whether a time in seconds lies in a contraction that was asked for.</param>
    public static MouthRhythm? Of(Envelope envelope, Envelope? elsewhere, Func<double, bool> isAsked)
    {
        List<double> row = [];
        List<(double FromS, double ToS)> stretches = [];
        List<double> gaps = [];
        foreach (double onset in Onsets(envelope).Where(onset => !isAsked(onset)).Append(double.PositiveInfinity))
        {
            if (row.Count > 0 && onset - row[^1] is < ShortestGapS or > LongestGapS)
            {
                if (row.Count >= LeastBursts && Rises(envelope, row) >= BesideTimes * (elsewhere is null ? 0 : Rises(elsewhere, row)))
                {
                    stretches.Add((row[0], row[^1]));
                    gaps.AddRange(row.Zip(row.Skip(1), (one, next) => next - one));
                }

                row.Clear();
            }

            row.Add(onset);
        }

        gaps.Sort();
        return stretches.Count == 0 ? null : new MouthRhythm(gaps.Count + stretches.Count, 1 / gaps[gaps.Count / 2], [.. stretches]);
    }

    /// <summary>How far the envelope rises above its rest from the first to the last burst of a row.</summary>
    private static double Rises(Envelope envelope, List<double> row)
    {
        int from = Math.Min(envelope.Values.Length - 1, (int)(row[0] * Envelope.RateHz));
        int to = Math.Min(envelope.Values.Length, (int)(row[^1] * Envelope.RateHz) + 1);
        double mean = envelope.Values[from..Math.Max(from + 1, to)].ToArray().Where(double.IsFinite).DefaultIfEmpty(0).Average();
        return envelope.Rest > 0 ? Math.Max(0, (mean / envelope.Rest) - 1) : 0;
    }

    private static List<double> Onsets(Envelope envelope)
    {
        List<double> onsets = [];
        double valley = double.PositiveInfinity;
        double peak = 0;
        int since = -1;
        for (int i = 0; i < envelope.Values.Length; i++)
        {
            double value = envelope.Values[i];
            if (since < 0)
            {
                valley = Math.Min(valley, double.IsNaN(value) ? double.PositiveInfinity : value);
                since = value >= RiseTimesRest * envelope.Rest && value >= RiseTimesValley * valley && envelope.Rest > 0 ? i : -1;
                peak = value;
            }
            else if (value >= FallToPeak * peak)
            {
                peak = Math.Max(peak, value);
            }
            else
            {
                if (i - since >= LeastWidth)
                {
                    onsets.Add(since / Envelope.RateHz);
                }

                since = -1;
                valley = double.IsNaN(value) ? double.PositiveInfinity : value;
            }
        }

        return onsets;
    }
}
