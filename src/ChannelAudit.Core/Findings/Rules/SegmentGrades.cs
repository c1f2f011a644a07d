using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Grades of a channel's single segments that can speak of a fault, and what they say about a trial between them that hides it.</summary>
/// <remarks>A segment is graded when it is asked: of an hour's segments only the nearest to active trials are.</remarks>
internal sealed class SegmentGrades
{
    private const int Nearest = 3;

    private readonly ChannelSurvey channel;
    private readonly ImmutableArray<int> segments;
    private readonly Func<int, PeakReading> readingOf;
    private readonly Func<int, Grade> judge;
    private readonly Func<int, double> otherOf;

    /// <summary>Prepares to grade segments of a channel.</summary>
    /// <param name="channel">The channel.</param>
    /// <param name="segments">The segments that can speak, ascending.</param>
    /// <param name="readingOf">A segment's level and frequency.</param>
    /// <param name="judge">Grades a segment.</param>
    /// <param name="otherOf">A segment's level on the other side of the scoring filter.</param>
    public SegmentGrades(
        ChannelSurvey channel, ImmutableArray<int> segments, Func<int, PeakReading> readingOf, Func<int, Grade> judge, Func<int, double> otherOf)
    {
        this.channel = channel;
        this.segments = segments;
        this.readingOf = readingOf;
        this.judge = judge;
        this.otherOf = otherOf;
    }

    /// <summary>From the first to the last segment of at least a grade, in seconds; null when there is none.</summary>
    public (double FromS, double ToS)? StretchOf(Grade grade)
    {
        int first = 0;
        while (first < segments.Length && judge(segments[first]) < grade)
        {
            first++;
        }

        if (first == segments.Length)
        {
            return null;
        }

        int last = segments.Length - 1;
        while (judge(segments[last]) < grade)
        {
            last--;
        }

        return (SecondsAt(first), SecondsAt(last) + (channel.Frame.SegmentLength / channel.Frame.RateHz));
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
        return Side(first, Math.Min(segments.Length, first + Nearest));
    }

    private SideReading? Side(int from, int to)
    {
        if (from >= to)
        {
            return null;
        }

        Span<Grade> grades = stackalloc Grade[Nearest];
        Span<LevelAt> levels = stackalloc LevelAt[Nearest];
        int count = to - from;
        for (int i = 0; i < count; i++)
        {
            // Sorted as they come; equal levels stay in order.
            PeakReading reading = readingOf(segments[from + i]);
            LevelAt level = new(reading.Rms, reading.Hz, otherOf(segments[from + i]));
            Grade grade = judge(segments[from + i]);
            int place = i;
            for (; place > 0 && grades[place - 1] > grade; place--)
            {
                grades[place] = grades[place - 1];
            }

            grades[place] = grade;
            for (place = i; place > 0 && levels[place - 1].Rms > level.Rms; place--)
            {
                levels[place] = levels[place - 1];
            }

            levels[place] = level;
        }

        // Two middle ones: the milder grade.
        LevelAt middle = levels[(count - 1) / 2];
        return new SideReading(grades[(count - 1) / 2], middle.Rms, middle.Hz, middle.Other, IsOneFrequency(levels[..count]));
    }

    private bool IsOneFrequency(ReadOnlySpan<LevelAt> side)
    {
        double least = double.PositiveInfinity;
        double greatest = double.NegativeInfinity;
        foreach (LevelAt one in side)
        {
            if (one.Hz > 0)
            {
                (least, greatest) = (Math.Min(least, one.Hz), Math.Max(greatest, one.Hz));
            }
        }

        return greatest >= least && greatest - least <= LineWindow.Reach * channel.Frame.BinHz;
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
