using System.Collections.Immutable;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
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

    [Fact]
    public void BitsAreChosenByAMask()
    {
        // Bit 8 is a battery light that blinks, bit 0 to 3 are codes.
        double[] values = [.. Enumerable.Range(0, 2000).Select(i => ((i / 300 % 2) * 256.0) + (i is >= 500 and < 520 ? 3 : 0) + (i is >= 1500 and < 1520 ? 5 : 0))];
        using Recording made = ArrayRecording.Of(1000, ("TRIG", values));

        Assert.Equal([new(0.5m, 0m, "3"), new(1.5m, 0m, "5")], Read(made, new TriggerSetup { Mask = 0x0F }).Events.ToArray());
    }

    [Fact]
    public void MoreValuesThanAPulseHasAreStillCodesBehindAMask()
    {
        double[] values = [.. Enumerable.Range(0, 2000).Select(i => (256.0 * i) + (i is >= 500 and < 520 ? 3 : 0))];
        using Recording made = ArrayRecording.Of(1000, ("TRIG", values));

        Assert.Equal([new(0.5m, 0m, "3")], Read(made, new TriggerSetup { Mask = 0x0F }).Events.ToArray());
    }

    [Fact]
    public void AMaskNeedsWholeNumbers()
    {
        using Recording made = ArrayRecording.Of(1000, ("TRIG", [0, 0.5, 0, 1]));
        ChannelAuditException fault = Assert.Throws<ChannelAuditException>(() => Read(made, new TriggerSetup { Mask = 1 }));

        Assert.Equal("made.edf, channel 'TRIG': trigger_mask is given, but the channel does not hold whole numbers", fault.Message);
        Assert.Equal(FaultKind.Usage, fault.Kind);
    }

    [Theory]
    [InlineData(TriggerEdge.Rising, "0.1 0 2; 0.3 0 3; 0.35 0 2")]
    [InlineData(TriggerEdge.Falling, "0.2 0 2; 0.35 0 3; 0.4 0 2")]
    [InlineData(TriggerEdge.Both, "0.1 0 2; 0.2 0 0; 0.3 0 3; 0.35 0 2; 0.4 0 0")]
    [InlineData(TriggerEdge.Held, "0.1 0.1 2; 0.3 0.05 3; 0.35 0.05 2")]
    public void EveryEdgeIsWhatItSays(TriggerEdge edge, string expected)
    {
        double[] values = new double[1000];
        values.AsSpan(100, 100).Fill(2);
        values.AsSpan(300, 50).Fill(3);
        values.AsSpan(350, 50).Fill(2);
        using Recording made = ArrayRecording.Of(1000, ("TRIG", values));

        Assert.Equal(expected, string.Join("; ", Read(made, new TriggerSetup { Edge = edge }).Events.Select(one => FormattableString.Invariant($"{one.OnsetS:0.###} {one.DurationS:0.###} {one.Label}"))));
    }

    [Fact]
    public void CodesGetLabelsAndOthersAreCounted()
    {
        double[] values = new double[1000];
        values.AsSpan(100, 600).Fill(1);
        values.AsSpan(750, 10).Fill(2);
        values.AsSpan(800, 10).Fill(7);
        using Recording made = ArrayRecording.Of(1000, ("TRIG", values));

        // Code 1 is the commonest value; it is listed, so that it cannot be the base level.
        TrialEvents read = Read(made, new TriggerSetup { Codes = ImmutableSortedDictionary<long, string>.Empty.Add(1, "rest").Add(2, "angry") });

        Assert.Equal([new(0.1m, 0m, "rest"), new(0.75m, 0m, "angry")], read.Events.ToArray());
        Assert.Equal([new("made.edf", "channel 'TRIG'", "codes that are not in trigger_codes make no event: 7 (1 time)")], read.Warnings.ToArray());
    }

    [Fact]
    public void ALineThatTogglesHasALabelForEachSide()
    {
        double[] values = [.. Enumerable.Range(0, 900).Select(i => (i / 300) % 2.0)];
        using Recording made = ArrayRecording.Of(1000, ("TRIG", values));

        // The first stands there already: nothing has changed yet.
        Assert.Equal(
            [new(0.3m, 0m, "on"), new(0.6m, 0m, "off")],
            Read(made, new TriggerSetup { Codes = ImmutableSortedDictionary<long, string>.Empty.Add(0, "off").Add(1, "on") }).Events.ToArray());
    }

    [Fact]
    public void WhatBouncesIsADoubleAndSlowLinesAreOneCode()
    {
        double[] values = new double[2000];
        values.AsSpan(100, 10).Fill(3);
        values.AsSpan(130, 10).Fill(3);
        values.AsSpan(170, 10).Fill(3);
        values.AsSpan(1000, 2).Fill(1);
        values.AsSpan(1002, 10).Fill(5);
        using Recording made = ArrayRecording.Of(1000, ("TRIG", values));

        TrialEvents read = Read(made, new TriggerSetup { LeastMs = 50 });

        Assert.Equal([new(0.1m, 0m, "3"), new(1m, 0m, "5")], read.Events.ToArray());
        Assert.Equal([new(0.13m, 0m, "3"), new(0.17m, 0m, "3")], read.Doubles.ToArray());
    }

    [Fact]
    public void AHeldCodeThatBouncesStaysOneTrial()
    {
        double[] values = new double[2000];
        values.AsSpan(98, 2).Fill(1);
        values.AsSpan(100, 900).Fill(3);
        values.AsSpan(110, 10).Clear();
        values.AsSpan(1010, 5).Fill(3);
        using Recording made = ArrayRecording.Of(1000, ("TRIG", values));

        TrialEvents read = Read(made, new TriggerSetup { Edge = TriggerEdge.Held, LeastMs = 50 });

        Assert.Equal([new(0.098m, 0.917m, "3")], read.Events.ToArray());
        Assert.Equal([0.12m, 1.01m], read.Doubles.Select(one => one.OnsetS).ToArray());
    }

    private static TrialEvents Read(Recording made, TriggerSetup rules) => TriggerChannel.Read(made, 0, rules);
}
