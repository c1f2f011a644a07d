using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>What is good passes, whatever else a room and a face add. Truth: the plan of the made session, which the engine does not see.</summary>
public sealed class CleanSessionTests
{
    [Theory]
    [InlineData(101, 2000)]
    [InlineData(102, 2000)]
    [InlineData(103, 1000)]
    [InlineData(104, 1000)]
    [InlineData(105, 1024)]
    [InlineData(106, 2048)]
    [InlineData(107, 500)]
    [InlineData(108, 2000)]
    public void ACleanSessionPassesInEveryCell(ulong seed, int rateHz)
    {
        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(MadeAudit.Session(seed, rateHz)));

        Assert.True(MadeAudit.Blemishes(result).Length == 0, MadeAudit.Blemishes(result));
    }

    [Fact]
    public void ARateThatIsNoWholeNumberIsAuditedToo()
    {
        SessionPlan plan = MadeAudit.WithConfusers(MadeAudit.Session(109)) with { Rate = new Rational(4974, 10) };

        RecordingResult result = MadeAudit.Of(plan);

        Assert.True(MadeAudit.Blemishes(result).Length == 0, MadeAudit.Blemishes(result));
        Assert.All(result.Channels, channel => Assert.Contains(channel.NotAssessed, open => string.Equals(open.Reason, "bridge", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData(111)]
    [InlineData(112)]
    [InlineData(113)]
    public void StrongMusclesTogetherAreNoBridge(ulong seed)
    {
        SessionPlan plan = MadeAudit.Session(seed);
        plan = plan with
        {
            Trials = [.. plan.Trials.Select(trial => trial.Activity.IsEmpty
                ? trial
                : trial with { Activity = [new SiteActivity("cheek", 25), new SiteActivity("eye", 25)] })],
        };

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(plan));

        Assert.Empty(MadeAudit.FoundFor(result, "cheek", "bridge"));
        Assert.Empty(MadeAudit.FoundFor(result, "eye", "bridge"));
    }

    [Theory]
    [InlineData(121, 0.1)]
    [InlineData(122, 0.2)]
    [InlineData(123, 0.25)]
    [InlineData(124, 0.25)]
    public void CrosstalkThroughTissueIsNeverRejectedAsABridge(ulong seed, double share)
    {
        SessionPlan plan = MadeAudit.Session(seed) with { Faults = [new Crosstalk("cheek", "eye", share), new Crosstalk("eye", "cheek", share)] };

        RecordingResult result = MadeAudit.Of(plan);

        Assert.Empty(MadeAudit.RejectedFor(result, "cheek", "bridge"));
        Assert.Empty(MadeAudit.RejectedFor(result, "eye", "bridge"));
    }

    [Theory]
    [InlineData(131)]
    [InlineData(132)]
    [InlineData(133)]
    public void SharedMainsMotionAndARemoteSourceAreNeverRejectedAsABridge(ulong seed)
    {
        SessionPlan plan = MadeAudit.Session(seed) with
        {
            Faults =
            [
                new MainsPickup(["cheek", "brow", "eye"], 3),
                new Motion(["cheek", "brow", "eye"], 20),
                new CommonSource(20, [new RemoteShare("cheek", 0.5, 0.1), new RemoteShare("brow", 0.4, 0.1), new RemoteShare("eye", 0.6, 0.1)])
                {
                    Span = new FaultSpan(40, 55),
                },
            ],
        };

        RecordingResult result = MadeAudit.Of(plan);

        Assert.All(result.Channels, channel => Assert.Empty(MadeAudit.RejectedFor(result, channel.Name, "bridge")));
    }

    [Fact]
    public void ConditionLabelsChangeNoVerdict()
    {
        SessionPlan plan = MadeAudit.WithConfusers(MadeAudit.Session(141), new MainsPickup(["brow"], 7) { Span = new FaultSpan(60, null) });
        SessionPlan renamed = plan with
        {
            Trials = [.. plan.Trials.Select(trial => trial with { Label = trial.Label is "harbour" ? "meadow" : trial.Label is "meadow" ? "harbour" : trial.Label })],
        };

        RecordingResult first = MadeAudit.Of(plan);
        RecordingResult second = MadeAudit.Of(renamed);

        Assert.Contains(first.Channels.SelectMany(channel => channel.Cells), cell => cell.Verdict == Grade.Reject);
        Assert.Equal(MadeAudit.Blemishes(first), MadeAudit.Blemishes(second));
    }
}
