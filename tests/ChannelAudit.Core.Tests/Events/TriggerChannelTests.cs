using ChannelAudit.Events;
using ChannelAudit.Recordings;
using Xunit;

namespace ChannelAudit.Tests.Events;

public sealed class TriggerChannelTests
{
    [Fact]
    public void EveryChangeAwayFromTheBaseLevelIsAnEvent()
    {
        double[] values = new double[40_000];
        values.AsSpan(100, 10).Fill(3);
        values.AsSpan(20_000, 5).Fill(7);
        values.AsSpan(20_005, 5).Fill(3);
        using Recording made = ArrayRecording.Of(1000, ("TRIG", values));

        Assert.Equal([new(0.1m, 0m, "3"), new(20m, 0m, "7"), new(20.005m, 0m, "3")], TriggerChannel.Read(made, 0).ToArray());
    }

    [Fact]
    public void TheBaseLevelIsTheCommonestValue()
    {
        double[] values = new double[1000];
        Array.Fill(values, 255);
        values.AsSpan(500, 20).Clear();
        using Recording made = ArrayRecording.Of(1000, ("TRIG", values));

        Assert.Equal([new(0.5m, 0m, "0")], TriggerChannel.Read(made, 0).ToArray());
    }

    [Fact]
    public void AnAnaloguePulseIsReadAtItsMiddle()
    {
        double[] values = [.. Enumerable.Range(0, 2000).Select(i => (i * 7919 % 1000 / 1000.0) + (i is >= 700 and < 900 ? 5000 : 0))];
        using Recording made = ArrayRecording.Of(1000, ("TRIG", values));

        Assert.Equal([new(0.7m, 0m, "1")], TriggerChannel.Read(made, 0).ToArray());
    }

    [Fact]
    public void AChannelThatNeverChangesHasNoEvents()
    {
        using Recording made = ArrayRecording.Of(1000, ("TRIG", new double[1000]));

        Assert.Empty(TriggerChannel.Read(made, 0));
    }
}
