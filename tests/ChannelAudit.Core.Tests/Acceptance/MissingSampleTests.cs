using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Samples that one channel alone lacks, as only text can say.</summary>
public sealed class MissingSampleTests
{
    [Theory]
    [InlineData(501, 2000)]
    [InlineData(502, 1000)]
    [InlineData(503, 1024)]
    [InlineData(504, 1000)]
    [InlineData(505, 500)]
    public void MissingSamplesAreRejectedAboveTheirLimitOnThatChannelOnly(ulong seed, int rateHz)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(rateHz, 1), 4);
        FaultSpan In(int trial, decimal seconds) => new(plan.Trials[trial - 1].OnsetS + 1, plan.Trials[trial - 1].OnsetS + 1 + seconds);

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusersAndMotion(
            plan,
            new MissingSamples("cheek") { Span = In(5, 0.075M) },
            new MissingSamples("cheek") { Span = In(6, 0.035M) },
            new MissingSamples("cheek") { Span = new FaultSpan(0, 0.5M) }));

        Assert.Equal([5], MadeAudit.RejectedFor(result, "cheek", "dropout"));
        Assert.Equal([5, 6], MadeAudit.FoundFor(result, "cheek", "dropout"));
        Assert.Empty(MadeAudit.FoundFor(result, "brow", "dropout"));
        Assert.Empty(MadeAudit.FoundFor(result, "eye", "dropout"));
    }
}
