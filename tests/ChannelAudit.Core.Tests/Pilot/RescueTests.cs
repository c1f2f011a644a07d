using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Pilot;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Pilot;

/// <summary>What a step may rescue is the share of trials that its fault spoils.</summary>
public sealed class RescueTests
{
    [Fact]
    public void AFaultOfSomeOfTheTimeGainsLessThanOneThatHoldsAllThrough()
    {
        PilotStep[] steps = [.. Steps(Site("cheek", ReasonCode.Flatline, 0.3), Site("eye", ReasonCode.LowFrequency, 1))];

        Assert.Equal([StepKind.Fasten, StepKind.Leads], steps.Select(step => step.Kind).ToArray());
        Assert.Equal([1.0, 0.3], steps.Select(step => step.Rescues).ToArray());
    }

    [Fact]
    public void TheOrderTurnsWithTheShares()
    {
        PilotStep[] steps = [.. Steps(Site("cheek", ReasonCode.Flatline, 0.9), Site("eye", ReasonCode.LowFrequency, 0.2))];
        Assert.Equal([StepKind.Leads, StepKind.Fasten], steps.Select(step => step.Kind).ToArray());
    }

    [Fact]
    public void ReasonsOfOneSiteSpoilTheSameTrials()
    {
        SiteReason flat = Reason(ReasonCode.Flatline, 0.5), pops = Reason(ReasonCode.Pops, 0.4);
        PilotStep step = Assert.Single(Steps(Site("cheek", ReasonCode.Flatline, 1) with { Reasons = [flat, pops] }));
        Assert.Equal(0.5, step.Rescues);
    }

    private static ImmutableArray<PilotStep> Steps(params ImmutableArray<PilotSite> sites) => NextSteps.Of(sites, [], null, 60);

    private static SiteReason Reason(string code, double share) => new(code, Grade.Reject, InTrialsOnly: false, code, code) { Share = share };

    private static PilotSite Site(string name, string code, double share) =>
        new() { Name = name, Verdict = Grade.Reject, IsAssessed = true, Reasons = [Reason(code, share)] };
}
