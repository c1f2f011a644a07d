using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Survey;
using ChannelAudit.Tests.Measures;
using Xunit;

namespace ChannelAudit.Tests.Survey;

/// <summary>Windows of time: their own samples only, segments from the first sample on, none across a gap.</summary>
public sealed class TrialPassTests
{
    private static readonly Rational Rate = new(1000, 1);

    [Theory]
    [InlineData(2.0, 3)]
    [InlineData(2.999, 4)]
    [InlineData(1.0, 1)]
    public void AnyoneCanComputeTheSameNumbers(double seconds, int segments)
    {
        double[] samples = Made.Sum(Made.Noise(1, 5, 20_000), Made.Sine(8, 50, 1000, 20_000));
        using Recording recording = PlainRecording.Of(Rate, Made.Stretches((0, 20_000)), samples);

        WindowReading window = Pass(recording).Read(7.25M, 7.25M + (decimal)seconds, CancellationToken.None).Windows[0];

        double[] density = MeanDensity(samples, [.. Enumerable.Range(0, segments).Select(i => 7250 + (500 * i))]);
        Assert.Equal(segments, window.Segments);
        Assert.All(Enumerable.Range(0, 501), bin => Assert.Equal(density[bin], window.Density[bin], 1e-9 * density.Max()));
        int[] open = [.. Enumerable.Range(20, 431).Where(bin => bin % 50 is > 2 and < 48)];
        Assert.Equal(open.Sum(bin => density[bin]) * 431 / open.Length, window.EmgPower!.Value, 1e-9 * window.EmgPower.Value);
    }

    [Fact]
    public void WhatTheFilterLeavesOfAllSegmentsIsTheMeanOfWhatItLeavesOfEach()
    {
        using Recording recording = PlainRecording.Of(Rate, Made.Stretches((0, 10_000)), Made.Noise(4, 5, 10_000));

        WindowReading window = Pass(recording).Read(2, 6, CancellationToken.None).Windows[0];

        Assert.Equal(window.Left!.Total, window.SegmentPowers.Average(segment => segment.TotalLeft), 1e-9 * window.Left.Total);
    }

    [Fact]
    public void NoSegmentCrossesAGap()
    {
        // Records of a second at 0, 1 and 5 s: one gap from 2 to 5 s.
        double[] samples = Made.Noise(2, 5, 3000);
        using Recording recording = PlainRecording.Of(Rate, Made.Stretches((0, 2000), (5000, 1000)), samples);
        RecordingSurvey survey = Survey(recording);

        WindowReading window = new TrialPass(recording, survey).Read(0, 6, CancellationToken.None).Windows[0];

        Assert.Equal([0L, 500, 1000, 5000], survey.Channels[0].Segments.Starts);
        Assert.Equal(4, window.Segments);
        Assert.Equal(3000, window.Gap);
        Assert.Equal(0.5, window.StoredShare);
        Assert.Equal(3, window.Time.Baseline.Count);
        double[] density = MeanDensity(samples, [0, 500, 1000, 2000]);
        Assert.All(Enumerable.Range(0, 501), bin => Assert.Equal(density[bin], window.Density[bin], 1e-9 * density.Max()));
    }

    [Fact]
    public void AWindowWithinAGapHasNothing()
    {
        using Recording recording = PlainRecording.Of(Rate, Made.Stretches((0, 2000), (5000, 1000)), Made.Noise(3, 5, 3000));

        WindowReading window = Pass(recording).Read(2.5M, 4.5M, CancellationToken.None).Windows[0];

        Assert.Equal(0, window.Window.Stored);
        Assert.Equal(2000, window.Gap);
        Assert.Null(window.EmgPower);
        Assert.NotNull(window.NoSpectrum);
    }

    [Fact]
    public void PiecesOfAWindowAreThoseThatAreStored()
    {
        ImmutableArray<Stretch> stretches = Made.Stretches((0, 100), (150, 50), (300, 100));

        Assert.Equal([new Stretch(90, 10, 90), new Stretch(150, 50, 100), new Stretch(300, 20, 150)], Window.Of(stretches, 90, 320).Pieces.ToArray());
        Assert.Equal([new Stretch(0, 100, 0)], Window.Of(stretches, -50, 150).Pieces.ToArray());
        Assert.Empty(Window.Of(stretches, 200, 300).Pieces);
        Assert.Empty(Window.Of(stretches, 400, 500).Pieces);
        Assert.Equal(0, Window.Of(stretches, 500, 400).Length);
    }

    [Fact]
    public void AnOnsetIsRoundedToTheNearestSampleOfTheFilesOwnRate()
    {
        Channel channel = Made.Channel(497.4) with { Stretches = Made.Stretches((0, 10_000)) };

        // 3.2 x 497.4 = 1591.68; 5.2 x 497.4 = 2586.48.
        Window window = Window.Between(channel, 3.2M, 5.2M);

        Assert.Equal(1592, window.Start);
        Assert.Equal(2586, window.End);
    }

    [Fact]
    public void PairsAreComparedFromTwoSecondsOn()
    {
        using Recording recording = PlainRecording.Of(Rate, Made.Stretches((0, 10_000)), Made.Noise(4, 5, 10_000), Made.Noise(5, 5, 10_000));
        TrialPass pass = Pass(recording);

        Assert.Null(pass.Read(1, 2.999M, CancellationToken.None).Pairs[0]);
        Assert.NotNull(pass.Read(1, 3, CancellationToken.None).Pairs[0]);
    }

    private static TrialPass Pass(Recording recording) => new(recording, Survey(recording));

    private static RecordingSurvey Survey(Recording recording) => RecordingSurvey.Of(
        recording, [.. recording.Channels.Select(channel => (channel, channel.Label))], [], StudySetup.Empty, CancellationToken.None);

    /// <summary>A plain discrete Fourier transform of Hann-windowed seconds without their mean, averaged.</summary>
    private static double[] MeanDensity(double[] samples, int[] starts)
    {
        double[] mean = new double[501];
        foreach (int start in starts)
        {
            double[] second = samples[start..(start + 1000)];
            double average = second.Average();
            double[] windowed = [.. second.Select((value, n) => (value - average) * (0.5 - (0.5 * Math.Cos(2 * Math.PI * n / 1000))))];
            for (int bin = 0; bin <= 500; bin++)
            {
                double re = 0;
                double im = 0;
                for (int n = 0; n < 1000; n++)
                {
                    double angle = 2 * Math.PI * (bin * n % 1000) / 1000;
                    re += windowed[n] * Math.Cos(angle);
                    im -= windowed[n] * Math.Sin(angle);
                }

                // One-sided; the squares of a periodic Hann add up to 3/8 N.
                mean[bin] += ((re * re) + (im * im)) * (bin is 0 or 500 ? 1 : 2) / (1000 * 375) / starts.Length;
            }
        }

        return mean;
    }
}
