using ChannelAudit.Decisions;
using ChannelAudit.Verdicts;
using Xunit;
using static ChannelAudit.Core.Tests.Decisions.LedgerSamples;

namespace ChannelAudit.Core.Tests.Decisions;

/// <summary>Which of several decisions holds for a trial.</summary>
public sealed class RecordingDecisionsTests
{
    [Theory]
    [InlineData(Grade.Reject, Grade.Pass, true)]
    [InlineData(Grade.Reject, Grade.Questionable, true)]
    [InlineData(Grade.Reject, Grade.Reject, false)]
    [InlineData(Grade.Questionable, Grade.Questionable, false)]
    [InlineData(Grade.Pass, Grade.Reject, false)]
    public void ADecisionAboutAChannelOnlyMakesItsTrialsWorse(Grade decided, Grade computed, bool holds)
    {
        StatedDecision whole = Of(Draft(verdict: decided));

        Assert.Equal(holds ? whole : null, new RecordingDecisions([whole]).OfTrial("cheek", 1, computed));
    }

    // A blind decision comes last, and not at all where the whole channel was decided to be worse.
    [Theory]
    [InlineData(Grade.Reject, Grade.Pass, false)]
    [InlineData(Grade.Reject, Grade.Reject, true)]
    [InlineData(Grade.Pass, Grade.Questionable, true)]
    public void ABlindDecisionHoldsWhereNoWorseOneCoversIt(Grade whole, Grade blind, bool holds)
    {
        StatedDecision channel = Of(Draft(verdict: whole));
        StatedDecision trial = Of(Draft(trial: 1, verdict: blind) with { Blind = true });

        Assert.Equal(holds ? trial : null, new RecordingDecisions([channel, trial]).OfTrial("cheek", 1, Grade.Reject));
    }

    [Fact]
    public void TheMoreExactDecisionComesFirst()
    {
        StatedDecision channel = Of(Draft(verdict: Grade.Reject));
        StatedDecision all = Of(Draft(trial: 1, verdict: Grade.Questionable) with { Channel = null });
        StatedDecision own = Of(Draft(trial: 1));

        Assert.Same(own, new RecordingDecisions([channel, all, own]).OfTrial("cheek", 1, Grade.Pass));
        Assert.Same(all, new RecordingDecisions([channel, all]).OfTrial("cheek", 1, Grade.Pass));
        Assert.Same(channel, new RecordingDecisions([channel, all]).OfTrial("cheek", 2, Grade.Pass));
    }

    [Fact]
    public void WhatAPersonShouldLookAtAgainIsSaid()
    {
        StatedDecision stale = new(Draft(trial: 2) with { Number = 3 }, DecisionState.Stale, "the trial is gone", IsFlagged: true);
        RecordingDecisions one = new([stale, Of(Draft(trial: 5)), Of(Draft(trial: 6))]);
        Assert.Equal((1, 2, 0), (one.Count(DecisionState.Stale), one.Count(DecisionState.InForce), one.Count(DecisionState.Withdrawn)));
        StatedDecision held = new(Draft() with { Number = 4 }, DecisionState.InForce, "it is computed otherwise now", IsFlagged: true);

        Assert.Equal(
            ["line 3: K07, cheek, trial 2 (smile): not applied: the trial is gone; decide again, or withdraw it", "line 4: K07, cheek: holds, but it is computed otherwise now; look again"],
            new RecordingDecisions([stale, held, Of(Draft(trial: 5))]).Warnings.Select(warning => $"{warning.Place}: {warning.Message}"),
            StringComparer.Ordinal);
    }

    [Fact]
    public void TheSubjectIsOneLine()
    {
        Assert.Equal("cheek", Draft().Subject);
        Assert.Equal("cheek, trial 3 (smile)", Draft(trial: 3).Subject);
        Assert.Equal("trial 3 (smile), all channels", (Draft(trial: 3) with { Channel = null }).Subject);
        Assert.Equal("cheek, trial 3", (Draft() with { Trial = new DecidedTrial(3, 1m, 2m, null) }).Subject);
    }

    [Fact]
    public void ADraftHasNoPlaceInAChain() => Assert.Equal((0, string.Empty, string.Empty), (Draft().Number, Draft().Previous, Draft().Sha256));

    private static StatedDecision Of(Decision decision) => new(decision, DecisionState.InForce, string.Empty);
}
