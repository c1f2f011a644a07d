using System.Globalization;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Survey;
using ChannelAudit.TestKit;
using ChannelAudit.Tests.Measures;
using Xunit;

namespace ChannelAudit.Tests.Survey;

/// <summary>Pops against SciPy: fixtures/oracles/make_oracles.py writes the definition down once more, with lfilter and find_peaks.</summary>
public sealed class PopOracleTests
{
    private const int Rate = 1000;
    private const int Count = 20_000;

    [Theory]
    [InlineData(41)]
    [InlineData(42)]
    [InlineData(43)]
    public void PopsAreWhereSciPyFindsThem(int seed)
    {
        using Recording recording = Of(Spiky((uint)seed));
        long[] expected = Expected(seed);

        long[] found = [.. PopsOf(recording).Places.All.Select(place => place.From + 50)];

        Assert.Equal(expected, found);
        Assert.Equal(0, recording.Channels[0].Stretches[0].Start);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(3)]
    [InlineData(0.01)]
    public void NeitherPolarityNorGainNorOffsetChangesThem(double gain)
    {
        using Recording plain = Of(Spiky(41));
        using Recording other = Of([.. Spiky(41).Select(value => (gain * value) + 1000)]);

        Assert.Equal(PopsOf(plain).Places.All, PopsOf(other).Places.All);
    }

    [Fact]
    public void AGapBeforeAPopDoesNotMoveIt()
    {
        double[] samples = Spiky(42);
        using Recording recording = PlainRecording.Of(new Rational(Rate, 1), Made.Stretches((0, 6000), (8000, 14_000)), samples);

        long[] expected = [.. Expected(42).Select(at => at < 6000 ? at : at + 2000)];

        Assert.Equal(expected, PopsOf(recording).Places.All.Select(place => place.From + 50));
    }

    [Fact]
    public void WhatAPopHoldsOfTheEnergyOfAWindowIsCounted()
    {
        double[] samples = new double[4000];
        (samples[1999], samples[2000], samples[2001]) = (50, 100, 50);
        double[] noise = Made.Noise(91, 1, 4000);
        using Recording recording = Of(Made.Sum(samples, noise));
        ChannelPops pops = PopsOf(recording);

        PopCount inside = pops.In(recording, Window.Of(recording.Channels[0].Stretches, 1000, 3000));
        PopCount outside = pops.In(recording, Window.Of(recording.Channels[0].Stretches, 2500, 3500));

        // 15 000 µV² at the spike, less what the high-pass takes of its mean (200 µV over the filter's memory: about a tenth); 2000 of noise,
        // of which the 101 samples around it count as well.
        Assert.Equal(1, inside.Count);
        Assert.InRange(inside.SharePercent!.Value, 82, 90);
        Assert.Equal(new PopCount(0, 0, 0), outside);
    }

    private static long[] Expected(int seed) =>
    [
        .. File.ReadAllLines(RepositoryRoot.Fixture("oracles/pops.tsv")).Skip(1)
            .Select(line => line.Split('\t'))
            .Where(cells => string.Equals(cells[0], seed.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal))
            .Select(cells => (long)double.Parse(cells[1], CultureInfo.InvariantCulture)),
    ];

    private static Recording Of(double[] samples) =>
        PlainRecording.Of(new Rational(Rate, 1), Made.Stretches((0, samples.Length)), samples);

    private static ChannelPops PopsOf(Recording recording) =>
        RecordingSurvey.Of(recording, [(recording.Channels[0], "a")], [], StudySetup.Empty, CancellationToken.None).Channels[0].Pops;

    private static double[] Spiky(uint seed)
    {
        double[] x = new double[Count];
        uint state = seed;
        for (int i = 0; i < Count; i++)
        {
            state = unchecked((1664525 * state) + 1013904223);
            x[i] = 3 * ((state / 4294967296.0) - 0.5);
        }

        foreach ((int at, double height) in new[] { (300, 30.0), (2100, -25), (4000, 12), (4030, 14), (5500, 9), (7200, 40), (19_900, -30) })
        {
            Add(x, at, height, [0.5, 1, 0.5]);
        }

        for (int i = 0; i < 40; i++)
        {
            x[9000 + i] += 40 * (1 - Math.Cos(2 * Math.PI * i / 40));
        }

        for (int i = 11_000; i < 11_150; i++)
        {
            x[i] *= 12;
        }

        for (int unit = 0; unit < 8; unit++)
        {
            Add(x, 14_000 + (110 * unit), 25, [-0.2, -0.4, 0.3, 1, 0.3, -0.4, -0.2]);
        }

        return x;
    }

    private static void Add(double[] x, int top, double height, double[] shape)
    {
        for (int i = 0; i < shape.Length; i++)
        {
            x[top - (shape.Length / 2) + i] += height * shape[i];
        }
    }
}
