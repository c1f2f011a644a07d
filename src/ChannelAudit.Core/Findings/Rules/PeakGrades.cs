using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Grades of a channel's single quiet segments for line noise or narrow peaks, and what they say about an active trial between them.</summary>
internal sealed class PeakGrades
{
    private const int Nearest = 3;

    private readonly ChannelSurvey channel;
    private readonly ImmutableArray<Grade> grades;
    private readonly ImmutableArray<PeakAt> peaks;

    private PeakGrades(ChannelSurvey channel, ImmutableArray<Grade> grades, ImmutableArray<PeakAt> peaks)
    {
        this.channel = channel;
        this.grades = grades;
        this.peaks = peaks;
    }

    /// <summary>Grades the quiet segments of a channel.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="readingOf">The segment's line or narrow reading.</param>
    /// <param name="judge">Grades a reading of one segment.</param>
    public static PeakGrades Of(
        ChannelSurvey channel, Func<int, Measures.PeakReading> readingOf, Func<Measures.PeakReading, double, Grade> judge)
    {
        ImmutableArray<int> quiet = channel.Quiet.Quiet;
        Grade[] found = new Grade[quiet.Length];
        PeakAt[] at = new PeakAt[quiet.Length];
        for (int i = 0; i < quiet.Length; i++)
        {
            Measures.PeakReading reading = readingOf(quiet[i]);
            found[i] = judge(reading, channel.Segments.BandPower[quiet[i]]);
            at[i] = new PeakAt(reading.Rms, reading.Hz);
        }

        return new PeakGrades(channel, [.. found], [.. at]);
    }

    /// <summary>From the first to the last quiet segment of at least a grade, in seconds; null when there is none.</summary>
    public (double FromS, double ToS)? StretchOf(Grade grade)
    {
        int first = -1;
        int last = -1;
        for (int i = 0; i < grades.Length; i++)
        {
            if (grades[i] >= grade)
            {
                first = first < 0 ? i : first;
                last = i;
            }
        }

        return first < 0 ? null : (SecondsAt(first), SecondsAt(last) + (channel.Frame.SegmentLength / channel.Frame.RateHz));
    }

    /// <summary>The three nearest quiet segments that end before a window; null when there is none.</summary>
    public SideReading? Before(long start)
    {
        int end = FirstStartingAtOrAfter(start - channel.Frame.SegmentLength + 1);
        return Side(Math.Max(0, end - Nearest), end);
    }

    /// <summary>The three nearest quiet segments that start after a window; null when there is none.</summary>
    public SideReading? After(long end)
    {
        int first = FirstStartingAtOrAfter(end);
        return Side(first, Math.Min(grades.Length, first + Nearest));
    }

    private SideReading? Side(int from, int to)
    {
        if (from >= to)
        {
            return null;
        }

        // Two middle ones: the milder grade.
        Grade[] sorted = [.. grades.AsSpan(from, to - from).ToArray().Order()];
        PeakAt[] byLevel = [.. peaks.AsSpan(from, to - from).ToArray().OrderBy(peak => peak.Rms)];
        PeakAt middle = byLevel[(byLevel.Length - 1) / 2];
        return new SideReading(sorted[(sorted.Length - 1) / 2], middle.Rms, middle.Hz, IsOneFrequency(byLevel));
    }

    private bool IsOneFrequency(PeakAt[] side)
    {
        double[] hz = [.. side.Where(peak => peak.Hz > 0).Select(peak => peak.Hz)];
        return hz.Length > 0 && hz.Max() - hz.Min() <= Measures.LineWindow.Reach * channel.Frame.BinHz;
    }

    private double SecondsAt(int quiet) => channel.Segments.Starts[channel.Quiet.Quiet[quiet]] / channel.Frame.RateHz;

    private int FirstStartingAtOrAfter(long sample)
    {
        ImmutableArray<int> quiet = channel.Quiet.Quiet;
        int low = 0;
        int high = quiet.Length;
        while (low < high)
        {
            int middle = (low + high) >>> 1;
            if (channel.Segments.Starts[quiet[middle]] >= sample)
            {
                high = middle;
            }
            else
            {
                low = middle + 1;
            }
        }

        return low;
    }

    /// <summary>Level and frequency of one segment's peak.</summary>
    private readonly record struct PeakAt(double Rms, double Hz);
}
