using System.Collections.Immutable;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>Trials that overlap in time lie side by side, so that none hides another.</summary>
internal static class TrialTracks
{
    /// <summary>More than this many at once share the last track.</summary>
    public const int Most = 3;

    /// <summary>Whether trials of one track overlap all the same, because too many run at once.</summary>
    public static bool AreCrowded(ImmutableArray<Trial> trials, ImmutableArray<int> tracks)
    {
        decimal[] freeFrom = new decimal[Most];
        Array.Fill(freeFrom, decimal.MinValue);
        foreach (int index in Enumerable.Range(0, trials.Length).OrderBy(index => trials[index].WindowFromS))
        {
            if (trials[index].WindowFromS < freeFrom[tracks[index]])
            {
                return true;
            }

            freeFrom[tracks[index]] = trials[index].WindowToS;
        }

        return false;
    }

    /// <summary>The track of each trial, from 0, in the order given.</summary>
    public static ImmutableArray<int> Of(ImmutableArray<Trial> trials)
    {
        decimal[] freeFrom = new decimal[Most];
        Array.Fill(freeFrom, decimal.MinValue);
        int[] tracks = new int[trials.Length];
        foreach (int index in Enumerable.Range(0, trials.Length).OrderBy(index => trials[index].WindowFromS))
        {
            int track = Array.FindIndex(freeFrom, free => free <= trials[index].WindowFromS);
            tracks[index] = track < 0 ? Most - 1 : track;
            freeFrom[tracks[index]] = Math.Max(freeFrom[tracks[index]], trials[index].WindowToS);
        }

        return [.. tracks];
    }
}
