using ChannelAudit.Recordings;
using ChannelAudit.Survey;
using ChannelAudit.Tests.Measures;
using Xunit;

namespace ChannelAudit.Tests.Survey;

/// <summary>The envelope against means over 20 ms taken sample by sample, whatever the rate and the blocks.</summary>
public sealed class EnvelopeSumsTests
{
    [Theory]
    [InlineData(2000, 1, 4001)]
    [InlineData(2000, 1, 333)]
    [InlineData(1000, 1, 1000)]
    [InlineData(2048, 1, 999)]
    [InlineData(4000, 3, 1777)]
    [InlineData(512, 1, 50)]
    public void EveryValueIsTheMedianOfFivePlainMeans(int rate, int perSeconds, int block)
    {
        using Recording recording = PlainRecording.Of(
            new Rational(rate, perSeconds), [new Stretch(0, 3000, 0), new Stretch(3411, 5000, 3000)], Made.Noise(7, 1, 8000));
        Channel channel = recording.Channels[0];
        double[] passed = Made.Noise(7, 1, 8000);
        EnvelopeSums sums = new(channel);
        foreach (Stretch stretch in channel.Stretches)
        {
            for (int at = 0; at < stretch.Length; at += block)
            {
                int length = (int)Math.Min(block, stretch.Length - at);
                sums.Add(passed.AsSpan((int)stretch.StoredStart + at, length), stretch.Start + at);
            }
        }

        Assert.Equal(Plain(channel, passed), sums.ToEnvelope()!.Values.ToArray());
    }

    [Fact]
    public void WithoutSamplesThereIsNone()
    {
        using Recording recording = PlainRecording.Of(new Rational(2000, 1), [new Stretch(0, 100, 0)], new double[100]);

        Assert.Null(new EnvelopeSums(recording.Channels[0]).ToEnvelope());
    }

    private static double[] Plain(Channel channel, double[] passed)
    {
        double rate = channel.Rate.Value;
        double[] sums = new double[(int)(channel.TimelineLength * 50 / rate) + 1];
        int[] counts = new int[sums.Length];
        foreach (Stretch stretch in channel.Stretches)
        {
            for (long at = stretch.Start; at < stretch.End; at++)
            {
                int place = (int)(at * 50 / rate);
                sums[place] += Math.Abs(passed[at - stretch.Start + stretch.StoredStart]);
                counts[place]++;
            }
        }

        double[] means = [.. sums.Zip(counts, (sum, count) => count == 0 ? double.NaN : sum / count)];
        return [.. means.Select((_, i) => MedianAround(means, i))];
    }

    private static double MedianAround(double[] means, int place)
    {
        double[] near = means[Math.Clamp(place - 2, 0, means.Length - 5)..][..5];
        return near.Any(double.IsNaN) ? double.NaN : near.Order().ElementAt(2);
    }
}
