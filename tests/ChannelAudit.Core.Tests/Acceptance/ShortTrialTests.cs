using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Mains in trials too short for a segment of one second, and in those that hold one or two: 1.5 and 0.7 times the reject limit.</summary>
public sealed class ShortTrialTests
{
    [Theory]
    [InlineData(801, 0.25, 2000)]
    [InlineData(802, 0.5, 1000)]
    [InlineData(803, 0.5, 1024)]
    [InlineData(804, 0.9, 1000)]
    [InlineData(805, 1.0, 1000)]
    [InlineData(806, 1.5, 2000)]
    public void MainsAreRejectedAboveTheirLimitInShortTrialsToo(ulong seed, double trialS, int rateHz)
    {
        SessionPlan plan = new Protocol
        {
            ScoredTrials = 12,
            TrialS = (decimal)trialS,
            RestS = 12,
            TaskS = 4,
            PauseS = 2,
            Answers = [[new SiteActivity("brow", 7)], [new SiteActivity("cheek", 4)]],
        }.Plan(seed) with
        { Rate = new Rational(rateHz, 1) };

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusersAndMotion(plan, new MainsPickup(["cheek"], 7.5), new MainsPickup(["brow"], 3.5)));

        Assert.Equal(Enumerable.Range(1, plan.Trials.Length), MadeAudit.RejectedFor(result, "cheek", "line-noise"));
        Assert.Empty(MadeAudit.RejectedFor(result, "brow", "line-noise"));
        Assert.Empty(MadeAudit.RejectedFor(result, "eye", "line-noise"));
    }
}
