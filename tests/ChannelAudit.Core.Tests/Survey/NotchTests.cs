using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Survey;
using ChannelAudit.Tests.Measures;
using Xunit;

namespace ChannelAudit.Tests.Survey;

/// <summary>Notch filters: seen where they are, not where chance makes a hole.</summary>
public sealed class NotchTests
{
    private static readonly MainsResult Mains = new(50, 50, string.Empty);

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(10)]
    [InlineData(60)]
    public void NoiseHasNoNotch(int seconds)
    {
        int seen = 0;
        for (ulong seed = 0; seed < 40; seed++)
        {
            seen += SeenIn(Made.Noise(seed, 3, seconds * 1000)).Length;
        }

        Assert.Equal(0, seen);
    }

    [Fact]
    public void HolesAtTheHarmonicsAreSeen() => Assert.Equal([1, 3, 5, 7], SeenIn(WithHoles(Made.Noise(7, 3, 20_000), 50, 150, 250, 350)));

    [Fact]
    public void AHoleElsewhereIsNoMainsNotch() => Assert.Empty(SeenIn(WithHoles(Made.Noise(8, 3, 20_000), 75, 120)));

    [Fact]
    public void AClaimedNotchIsBelieved()
    {
        using Recording recording = PlainRecording.Of(new Rational(1000, 1), Made.Stretches((0, 2000)), Made.Noise(9, 3, 2000));
        Channel channel = recording.Channels[0] with { Prefilter = new Prefilter(null, null, [50], "N:50Hz") };

        Assert.Equal(1, Assert.Single(Notches.Of(channel, SpectrumSample.Of(recording, channel, CancellationToken.None), Mains)));
    }

    /// <summary>Noise less its own part within 2 Hz of some frequencies, by a plain transform of each second.</summary>
    private static double[] WithHoles(double[] noise, params int[] centers)
    {
        double[] left = [.. noise];
        int[] bins = [.. centers.SelectMany(center => Enumerable.Range(center - 2, 5))];
        for (int start = 0; start < noise.Length; start += 1000)
        {
            foreach (int bin in bins)
            {
                double re = 0;
                double im = 0;
                for (int n = 0; n < 1000; n++)
                {
                    re += noise[start + n] * Math.Cos(2 * Math.PI * bin * n / 1000) / 500;
                    im += noise[start + n] * Math.Sin(2 * Math.PI * bin * n / 1000) / 500;
                }

                for (int n = 0; n < 1000; n++)
                {
                    left[start + n] -= (re * Math.Cos(2 * Math.PI * bin * n / 1000)) + (im * Math.Sin(2 * Math.PI * bin * n / 1000));
                }
            }
        }

        return left;
    }

    private static int[] SeenIn(double[] samples)
    {
        using Recording recording = PlainRecording.Of(new Rational(1000, 1), Made.Stretches((0, samples.Length)), samples);
        Channel channel = recording.Channels[0];
        return [.. Notches.Of(channel, SpectrumSample.Of(recording, channel, CancellationToken.None), Mains)];
    }
}
