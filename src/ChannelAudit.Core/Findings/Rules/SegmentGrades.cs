using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Grades of a channel's single segments that can speak of a fault, and what they say about a trial between them that hides it.</summary>
internal sealed class SegmentGrades
{
    private const int Nearest = 3;

    private readonly ChannelSurvey channel;
    private readonly ImmutableArray<int> segments;
    private readonly ImmutableArray<Grade> grades;
    private readonly ImmutableArray<LevelAt> levels;

    private SegmentGrades(
        ChannelSurvey channel, ImmutableArray<int> segments, ImmutableArray<Grade> grades, ImmutableArray<LevelAt> levels)
    {
        this.channel = channel;
        this.segments = segments;
        this.grades = grades;
        this.levels = levels;
    }

    /// <summary>Grades segments of a channel.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="segments">The segments that can speak, ascending.</param>
    /// <param name="readingOf">A segment's level and frequency.</param>
    /// <param name="judge">Grades a segment by its number and reading.</param>
    /// <param name="otherOf">A segment's level on the other side of the scoring filter.</param>
    public static SegmentGrades Of(
        ChannelSurvey channel,
        ImmutableArray<int> segments,
        Func<int, PeakReading> readingOf,
        Func<int, PeakReading, Grade> judge,
        Func<int, double> otherOf)
    {
        Grade[] found = new Grade[segments.Length];
        LevelAt[] at = new LevelAt[segments.Length];
        for (int i = 0; i < segments.Length; i++)
        {
            PeakReading reading = readingOf(segments[i]);
            found[i] = judge(segments[i], reading);
            at[i] = new LevelAt(reading.Rms, reading.Hz, otherOf(segments[i]));
        }

        return new SegmentGrades(channel, segments, [.. found], [.. at]);
    }

    /// <summary>From the first to the last segment of at least a grade, in seconds; null when there is none.</summary>
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

    /// <summary>The three nearest of them that end before a window; null when there is none.</summary>
    public SideReading? Before(long start)
    {
        int end = FirstStartingAtOrAfter(start - channel.Frame.SegmentLength + 1);
        return Side(Math.Max(0, end - Nearest), end);
    }

    /// <summary>The three nearest of them that start after a window; null when there is none.</summary>
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
        LevelAt[] byLevel = [.. levels.AsSpan(from, to - from).ToArray().OrderBy(one => one.Rms)];
        LevelAt middle = byLevel[(byLevel.Length - 1) / 2];
        return new SideReading(sorted[(sorted.Length - 1) / 2], middle.Rms, middle.Hz, middle.Other, IsOneFrequency(byLevel));
    }

    private bool IsOneFrequency(LevelAt[] side)
    {
        double[] hz = [.. side.Where(one => one.Hz > 0).Select(one => one.Hz)];
        return hz.Length > 0 && hz.Max() - hz.Min() <= LineWindow.Reach * channel.Frame.BinHz;
    }

    private double SecondsAt(int number) => channel.Segments.Starts[segments[number]] / channel.Frame.RateHz;

    private int FirstStartingAtOrAfter(long sample)
    {
        int low = 0;
        int high = segments.Length;
        while (low < high)
        {
            int middle = (low + high) >>> 1;
            if (channel.Segments.Starts[segments[middle]] >= sample)
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

    /// <summary>Level and frequency of one segment, and its level on the other side of the scoring filter.</summary>
    private readonly record struct LevelAt(double Rms, double Hz, double Other);
}
