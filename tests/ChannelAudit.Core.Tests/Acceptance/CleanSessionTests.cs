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
    [InlineData(108, 1000)]
    [InlineData(109, 1024)]
    [InlineData(110, 2000)]
    public void ACleanSessionPassesInEveryCell(ulong seed, int rateHz)
    {
        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(MadeAudit.Session(seed, new Rational(rateHz, 1))));

        Assert.True(MadeAudit.Blemishes(result).Length == 0, MadeAudit.Blemishes(result));
    }

    [Fact]
    public void ARateThatIsNoWholeNumberIsAuditedToo()
    {
        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(MadeAudit.Session(111, new Rational(4974, 10))));

        Assert.True(MadeAudit.Blemishes(result).Length == 0, MadeAudit.Blemishes(result));
        Assert.All(result.Channels, channel => Assert.Contains(channel.NotAssessed, open => string.Equals(open.Reason, "bridge", StringComparison.Ordinal)));
    }

    [Fact]
    public void ChannelsOfDifferentRatesPassAndTheirPairIsNotAssessed()
    {
        SessionPlan plan = MadeAudit.WithConfusers(MadeAudit.Session(112, new Rational(1000, 1)));
        using Recording fast = MadeRecording.Make(plan with { Rate = new Rational(2000, 1) }).Open();
        using Recording slow = MadeRecording.Make(plan).Open();
        using Recording mixed = Altered.Mixed(fast, slow, 2);

        RecordingResult result = MadeAudit.Of(mixed, plan);

        Assert.Equal([2000, 2000, 1000], result.Channels.Select(channel => channel.RateHz));
        Assert.True(MadeAudit.Blemishes(result).Length == 0, MadeAudit.Blemishes(result));
        Assert.Equal([null, "sampled at different rates", "sampled at different rates"], result.Pairs.Select(pair => pair.Evidence.NotAssessed), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData(113)]
    [InlineData(114)]
    public void LeadsThatSwayALittleAreNotRejected(ulong seed)
    {
        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusersAndMotion(MadeAudit.Session(seed, new Rational(1000, 1))));

        Assert.DoesNotContain(result.Channels.SelectMany(channel => channel.Cells), cell => cell.Verdict == Grade.Reject);
        Assert.All(result.Channels.SelectMany(channel => channel.Cells).SelectMany(cell => cell.Reasons), reason => Assert.Contains(reason, (string[])["drift", "low-frequency"], StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(115)]
    [InlineData(116)]
    [InlineData(117)]
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
    [InlineData(122, 0.15)]
    [InlineData(123, 0.2)]
    [InlineData(124, 0.25)]
    [InlineData(125, 0.25)]
    public void CrosstalkThroughTissueIsNeverRejectedAsABridge(ulong seed, double share)
    {
        SessionPlan plan = MadeAudit.Session(seed) with { Faults = [new Crosstalk("cheek", "eye", share), new Crosstalk("eye", "cheek", share)] };

        RecordingResult result = MadeAudit.Of(plan);

        Assert.Empty(MadeAudit.RejectedFor(result, "cheek", "bridge"));
        Assert.Empty(MadeAudit.RejectedFor(result, "eye", "bridge"));
    }

    /// <summary>A contraction so strong that its crosstalk alone raises the neighbour tenfold: then neither site ever seems to be active alone.</summary>
    [Theory]
    [InlineData(141, 0.1, 60, 150)]
    [InlineData(142, 0.2, 40, 150)]
    [InlineData(143, 0.25, 25, 300)]
    [InlineData(144, 0.25, 60, 300)]
    [InlineData(145, 0.25, 100, 450)]
    [InlineData(146, 0.33, 60, 450)]
    public void StrongContractionsSeenThroughTissueAreNoBridge(ulong seed, double share, double microvolts, double tissueHz)
    {
        SessionPlan plan = new Protocol { ScoredTrials = 8, RestS = 14, TaskS = 4, PauseS = 3, ContractionUv = microvolts }.Plan(seed) with
        {
            Faults =
            [
                new Crosstalk("cheek", "eye", share) { TissueLowpassHz = tissueHz },
                new Crosstalk("eye", "cheek", share) { TissueLowpassHz = tissueHz },
            ],
        };

        RecordingResult result = MadeAudit.Of(plan);

        Assert.Empty(MadeAudit.RejectedFor(result, "cheek", "bridge"));
        Assert.Empty(MadeAudit.RejectedFor(result, "eye", "bridge"));
    }

    [Theory]
    [InlineData(131)]
    [InlineData(132)]
    [InlineData(133)]
    [InlineData(134)]
    [InlineData(135)]
    public void SharedMainsMotionAndARemoteSourceAreNeverRejectedAsABridge(ulong seed)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(1000, 1)) with
        {
            Faults =
            [
                new MainsPickup(MadeAudit.Sites, 10),
                new Motion(MadeAudit.Sites, 20),
                new CommonSource(20, [new RemoteShare("cheek", 0.5, 0.1), new RemoteShare("brow", 0.4, 0.1), new RemoteShare("eye", 0.6, 0.1)])
                {
                    Span = seed % 2 == 0 ? FaultSpan.Whole : new FaultSpan(40, 55),
                },
            ],
        };

        RecordingResult result = MadeAudit.Of(plan);

        Assert.All(result.Channels, channel => Assert.Empty(MadeAudit.RejectedFor(result, channel.Name, "bridge")));
    }
}
