using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Tests.Measures;
using Xunit;

namespace ChannelAudit.Tests.Results;

/// <summary>Time of which nothing is stored; worked out by hand.</summary>
public sealed class RecordedGapTests
{
    [Fact]
    public void ATimeThatNoChannelHasIsAGap()
    {
        Channel fast = Of(1000, new Stretch(0, 2000, 0), new Stretch(5000, 1000, 2000));
        Channel slow = Of(100, new Stretch(0, 250, 0), new Stretch(450, 150, 250));

        RecordedGap[] gaps = [.. RecordedGap.Of([fast, slow])];

        Assert.Equal([new RecordedGap(2.5, 4.5)], gaps);
    }

    [Fact]
    public void WhatOneChannelAloneMissesIsNone() =>
        Assert.Empty(RecordedGap.Of([Of(1000, new Stretch(0, 6000, 0)), Of(1000, new Stretch(0, 2000, 0), new Stretch(5000, 1000, 2000))]));

    [Fact]
    public void AnUnbrokenRecordingHasNone() => Assert.Empty(RecordedGap.Of([Of(1000, new Stretch(0, 6000, 0))]));

    private static Channel Of(double rateHz, params ImmutableArray<Stretch> stretches) => Made.Channel(rateHz) with { Stretches = stretches };
}
