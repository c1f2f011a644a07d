using ChannelAudit.Measures;
using ChannelAudit.Signals.Random;
using Xunit;

namespace ChannelAudit.Tests.Measures;

/// <summary>Ranges against an array of flags.</summary>
public sealed class SampleRangesTests
{
    [Fact]
    public void RangesAgreeWithFlagsInWhateverOrderTheyCome()
    {
        for (ulong seed = 0; seed < 300; seed++)
        {
            Pcg32 random = new(seed);
            bool[] flags = new bool[300];
            SampleRanges ranges = new();
            for (int i = 0; i < 25; i++)
            {
                int from = (int)(280 * random.NextDouble());
                int to = from + 1 + (int)(12 * random.NextDouble());
                ranges.Add(from, to);
                flags.AsSpan(from, to - from).Fill(true);
            }

            Assert.Equal(RunsOf(flags), ranges.All);
            Assert.Equal(flags.Count(flag => flag), ranges.Total);
            int start = (int)(200 * random.NextDouble());
            int end = start + 1 + (int)(90 * random.NextDouble());
            (long From, long To)[] inside = [.. RunsOf(flags[start..end])];
            Assert.Equal((inside.Sum(run => run.To - run.From), inside.Length == 0 ? 0 : inside.Max(run => run.To - run.From)), ranges.Within(start, end));
            Assert.Equal(inside.Length > 0, ranges.Meets(start, end));
        }
    }

    [Fact]
    public void NearRangesAreJoined()
    {
        SampleRanges ranges = new(10);
        ranges.Add(0, 5);
        ranges.Add(15, 20);
        ranges.Add(31, 35);

        Assert.Equal([(0L, 20L), (31L, 35L)], ranges.All);
    }

    [Fact]
    public void WhatComesLaterAndLiesBeforeIsJoinedToo()
    {
        SampleRanges ranges = new(10);
        ranges.Add(100, 110);
        ranges.Add(80, 90);
        ranges.Add(60, 69);
        ranges.Add(121, 122);

        Assert.Equal([(60L, 69L), (80L, 110L), (121L, 122L)], ranges.All);
        Assert.Equal((40, 30), (ranges.Total, ranges.Longest));
        Assert.Equal((0, 0), (new SampleRanges().Total, new SampleRanges().Longest));
        Assert.False(ranges.Meets(69, 80));
        Assert.True(ranges.Meets(68, 69));
        Assert.True(ranges.Meets(79, 81));
    }

    private static List<(long From, long To)> RunsOf(bool[] flags)
    {
        List<(long From, long To)> runs = [];
        for (int i = 0; i < flags.Length; i++)
        {
            if (flags[i] && (i == 0 || !flags[i - 1]))
            {
                runs.Add((i, i + 1));
            }
            else if (flags[i])
            {
                runs[^1] = (runs[^1].From, i + 1);
            }
        }

        return runs;
    }
}
