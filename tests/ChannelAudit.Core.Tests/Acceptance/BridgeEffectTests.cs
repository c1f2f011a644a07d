using ChannelAudit.Findings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;
using Xunit;
using static ChannelAudit.Core.Tests.Acceptance.ScoredCells;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>What a bridge does to the score of a trial. Truth: the same muscles in the same session without gel, through the node equations.</summary>
public sealed class BridgeEffectTests
{
    [Fact]
    public void ABridgeSaysHowMuchOfTheOtherSiteGetsIn()
    {
        SessionPlan plan = MadeAudit.WithConfusers(MadeAudit.Session(911, null, 4), new IdenticalChannels("cheek", "brow"));

        Finding[] bridges = [.. MadeAudit.Of(plan).Channels.SelectMany(channel => channel.Findings).Where(one => one is { Reason: "bridge", Channels.Length: 2 })];

        Assert.NotEmpty(bridges);
        Assert.All(bridges, bridge => Assert.Null(bridge.Effect!.Percent));
        Assert.All(bridges, bridge => Assert.Matches("^depends on (cheek|brow): 100 % of its amplitude gets in$", bridge.Effect!.Note));
    }

    /// <summary>
    /// Second of the cheek on first of the eye without resistance, equal contacts: each keeps three quarters of its own and gets a quarter of the other
    /// (k = 1/2 in A = m_A (1 - k/2) - (k/2) m_B), a third of what the other then shows.
    /// </summary>
    [Theory]
    [InlineData(921)]
    [InlineData(922)]
    [InlineData(923)]
    public void WhatIsLeftWithoutTheOtherSiteIsThreeQuartersOfTheMuscle(ulong seed)
    {
        SessionPlan plan = MadeAudit.Session(seed);
        RecordingResult apart = MadeAudit.Of(plan);
        RecordingResult joined = MadeAudit.Of(plan with { Faults = [ElectrodeBridge.OneNode("cheek", "eye", 0.01)] });

        foreach (string site in new[] { "cheek", "eye" })
        {
            foreach (int trial in joined.Trials.Where(trial => trial.Label is "raise lip corner" or "tighten lids").Select(trial => trial.Number))
            {
                Finding found = Found(joined, site, trial, "bridge");
                double muscle = Measure(apart, site, trial, "rectified").Value.Value!.Value;
                double measured = Measure(joined, site, trial, "rectified").Value.Value!.Value;

                // Of the site that is asked; the other's own share drowns in what it gets, and only that is held to be little.
                if (muscle > 5)
                {
                    Assert.Equal(0.75 * muscle, found.Effect!.WithoutUv!.Value, 0.1 * muscle);
                }
                else
                {
                    Assert.True(found.Effect!.Microvolts > 0.5 * measured, FormattableString.Invariant($"{site} {trial}: {found.Effect} of {measured}"));
                }
            }
        }
    }

    [Fact]
    public void TrialsThatAreNotJoinedHaveNoEffect()
    {
        SessionPlan plan = MadeAudit.Session(924);
        double half = (double)plan.DurationS / 2;

        RecordingResult result = MadeAudit.Of(plan with { Faults = [ElectrodeBridge.TwoNodes("cheek", "eye", 0.5) with { Span = new FaultSpan((decimal)half, plan.DurationS) }] });

        CellResult[] cells = [.. MadeAudit.Channel(result, "cheek").Cells];
        Assert.DoesNotContain(cells[0].Findings, finding => finding.Reason is "bridge");
        Assert.Contains(cells[^1].Findings, finding => finding is { Reason: "bridge", Effect.Note: not null });
    }
}
