using ChannelAudit.Recordings;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Views;
using Xunit;

namespace ChannelAudit.Core.Tests.Views;

public sealed class ExcerptTraceTests
{
    private static readonly SessionPlan Plan = new() { Seed = 9, DurationS = 4, Sites = [SitePlan.Face[0]] };

    [Fact]
    public void WithAColumnASampleItIsTheSamples()
    {
        MadeRecording made = MadeRecording.Make(Plan);
        using Recording recording = made.Open();

        Trace trace = ExcerptTrace.Of(recording, recording.Channels[0], 1.5, 1.505, 100, CancellationToken.None);

        double[] expected = [.. made.CodesOf("cheek")[3000..3010].ToArray().Select(code => code * Plan.Amplifier.StepUv)];
        Assert.Equal((1.5, 1.505), (trace.FromS, trace.ToS));
        Assert.Equal(expected, trace.Least.AsEnumerable());
        Assert.Equal(expected, trace.Greatest.AsEnumerable());
    }

    [Fact]
    public void WhatIsNotStoredHasNoValue()
    {
        using Recording recording = MadeRecording.Make(Plan with { Faults = [new RecordingGap { Span = new FaultSpan(2, 2.5M) }] }).Open();

        Trace trace = ExcerptTrace.Of(recording, recording.Channels[0], 1.5, 3, 15, CancellationToken.None);

        Assert.Equal([5, 6, 7, 8, 9], Enumerable.Range(0, trace.Columns).Where(column => double.IsNaN(trace.Least[column])));
    }

    [Fact]
    public void ItEndsWithTheRecording()
    {
        using Recording recording = MadeRecording.Make(Plan).Open();

        Trace trace = ExcerptTrace.Of(recording, recording.Channels[0], 3.9, 9, 50, CancellationToken.None);

        Assert.Equal((3.9, 4.0, 50), (trace.FromS, trace.ToS, trace.Columns));
    }
}
