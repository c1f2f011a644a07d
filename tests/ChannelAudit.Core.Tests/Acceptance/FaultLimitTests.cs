using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>
/// Each fault at 1.5 times its reject limit is rejected for that reason, at 0.7 times it is not, with the confusers present. Sizes are the
/// limits of docs/criteria.md (engineering judgement); the truth is the plan of the made session.
/// </summary>
public sealed class FaultLimitTests
{
    public static TheoryData<ulong> Seeds => [201, 202, 203, 204, 205];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void MainsAboveItsLimitIsRejectedInQuietAndActiveTrials(ulong seed)
    {
        SessionPlan plan = MadeAudit.Session(seed);
        FaultSpan late = new(plan.Trials[7].OnsetS - 3, null);

        RecordingResult above = MadeAudit.Of(MadeAudit.WithConfusers(plan, new MainsPickup(["cheek"], 1.5 * 5) { Span = late }));
        RecordingResult below = MadeAudit.Of(MadeAudit.WithConfusers(plan, new MainsPickup(["cheek"], 0.7 * 5) { Span = late }));

        Assert.Equal(Enumerable.Range(8, plan.Trials.Length - 7), MadeAudit.RejectedFor(above, "cheek", "line-noise"));
        Assert.Empty(MadeAudit.RejectedFor(below, "cheek", "line-noise"));
        Assert.NotEmpty(MadeAudit.FoundFor(below, "cheek", "line-noise"));
        Assert.Empty(MadeAudit.FoundFor(above, "brow", "line-noise"));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void MainsOffItsNominalFrequencyAndInHarmonicsOnlyIsRejectedToo(ulong seed)
    {
        SessionPlan plan = MadeAudit.Session(seed, 1000);
        MainsPickup harmonics = new(["eye"], 7.5, 59.7) { Harmonics = [0.3, 0, 1, 0, 1] };

        RecordingResult result = MadeAudit.Of(plan with { Faults = [harmonics] });

        Assert.Equal(60, result.Mains.NominalHz);
        Assert.InRange(result.Mains.Hz, 59.65, 59.75);
        Assert.Equal(plan.Trials.Length, MadeAudit.RejectedFor(result, "eye", "line-noise").Length);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void ANarrowPeakThatIsNotMainsIsRejectedUnderItsOwnName(ulong seed)
    {
        SessionPlan plan = MadeAudit.Session(seed);

        RecordingResult above = MadeAudit.Of(MadeAudit.WithConfusers(plan, new NarrowPeak(["brow"], 1.5 * 5, 85.3)));
        RecordingResult below = MadeAudit.Of(MadeAudit.WithConfusers(plan, new NarrowPeak(["brow"], 0.7 * 5, 85.3)));

        // In its answers of 7 µV the muscle is as strong as the tone: there the ratio is at its limit, not beyond it.
        IEnumerable<int> others = plan.Trials.Select((trial, i) => (trial, i)).Where(one => !one.trial.Label.Equals("harbour", StringComparison.Ordinal)).Select(one => one.i + 1);
        Assert.Empty(others.Except(MadeAudit.RejectedFor(above, "brow", "narrow-band")));
        Assert.Equal(plan.Trials.Length, MadeAudit.FoundFor(above, "brow", "narrow-band").Length);
        Assert.Empty(MadeAudit.RejectedFor(below, "brow", "narrow-band"));
        Assert.Empty(MadeAudit.FoundFor(above, "brow", "line-noise"));
    }

    [Theory]
    [InlineData(211, true)]
    [InlineData(212, true)]
    [InlineData(213, false)]
    [InlineData(214, false)]
    public void ClippedShareAboveOnePercentIsRejected(ulong seed, bool hidden)
    {
        SessionPlan plan = MadeAudit.Session(seed);
        RailBlocks Blocks(double percent) => new("cheek", percent, 2) { Span = FaultSpan.Of(plan.Trials[6]), RailUv = hidden ? 400 : null };

        RecordingResult above = MadeAudit.Of(MadeAudit.WithConfusers(plan, Blocks(1.5)));
        RecordingResult below = MadeAudit.Of(MadeAudit.WithConfusers(plan, Blocks(0.7)));

        Assert.Equal([7], MadeAudit.RejectedFor(above, "cheek", "clipping"));
        Assert.Empty(MadeAudit.RejectedFor(below, "cheek", "clipping"));
        Assert.Equal([7], MadeAudit.FoundFor(below, "cheek", "clipping"));
    }

    [Theory]
    [InlineData(221, 2000)]
    [InlineData(222, 1000)]
    public void ARunAtTheRailAboveTenMillisecondsIsRejected(ulong seed, int rateHz)
    {
        SessionPlan plan = MadeAudit.Session(seed, rateHz);
        RailBlocks Run(double ms)
        {
            int samples = (int)(ms * rateHz / 1000);
            return new RailBlocks("cheek", 100.0 * samples / (3 * rateHz), samples) { Span = FaultSpan.Of(plan.Trials[6]) };
        }

        RecordingResult above = MadeAudit.Of(MadeAudit.WithConfusers(plan, Run(15)));
        RecordingResult below = MadeAudit.Of(MadeAudit.WithConfusers(plan, Run(7)));

        Assert.Equal([7], MadeAudit.RejectedFor(above, "cheek", "clipping"));
        Assert.Empty(MadeAudit.RejectedFor(below, "cheek", "clipping"));
    }

    [Theory]
    [InlineData(231, 2000, false)]
    [InlineData(232, 1000, false)]
    [InlineData(233, 2000, true)]
    [InlineData(234, 1000, true)]
    public void AFlatStretchAboveItsLimitIsRejected(ulong seed, int rateHz, bool toggles)
    {
        SessionPlan plan = MadeAudit.Session(seed, rateHz);
        Flatline Flat(decimal seconds) => new("brow")
        {
            Toggles = toggles,
            Span = new FaultSpan(plan.Trials[6].OnsetS + 1, plan.Trials[6].OnsetS + 1 + seconds),
        };

        RecordingResult above = MadeAudit.Of(MadeAudit.WithConfusers(plan, Flat(0.3M)));
        RecordingResult below = MadeAudit.Of(MadeAudit.WithConfusers(plan, Flat(0.14M)));

        Assert.Equal([7], MadeAudit.RejectedFor(above, "brow", "flatline"));
        Assert.Empty(MadeAudit.RejectedFor(below, "brow", "flatline"));
        Assert.Equal([7], MadeAudit.FoundFor(below, "brow", "flatline"));
    }

    [Fact]
    public void AGapAboveFiftyMillisecondsIsRejectedOnEveryChannel()
    {
        SessionPlan plan = MadeAudit.Session(241);
        RecordingGap Gap(decimal seconds) => new() { Span = new FaultSpan(plan.Trials[6].OnsetS + 1, plan.Trials[6].OnsetS + 1 + seconds) };

        RecordingResult above = MadeAudit.Of(MadeAudit.WithConfusers(plan, Gap(0.1M)));
        RecordingResult below = MadeAudit.Of(MadeAudit.WithConfusers(plan, Gap(0.035M)));

        Assert.All(above.Channels, channel => Assert.Equal([7], MadeAudit.RejectedFor(above, channel.Name, "dropout")));
        Assert.All(below.Channels, channel => Assert.Empty(MadeAudit.RejectedFor(below, channel.Name, "dropout")));
        Assert.All(below.Channels, channel => Assert.Equal([7], MadeAudit.FoundFor(below, channel.Name, "dropout")));
    }

    [Fact]
    public void ATrialPastTheEndIsDropout()
    {
        SessionPlan plan = MadeAudit.Session(242);
        SessionPlan cut = plan with { DurationS = plan.Trials[^1].EndS - 3 };

        RecordingResult result = MadeAudit.Of(cut);

        Assert.All(result.Channels, channel => Assert.Equal([plan.Trials.Length], MadeAudit.RejectedFor(result, channel.Name, "dropout")));
    }

    [Theory]
    [InlineData(251, 9000, true)]
    [InlineData(252, -9000, true)]
    [InlineData(253, 4200, false)]
    public void ABaselineThatRunsAwayIsRejected(ulong seed, double slope, bool isAbove)
    {
        SessionPlan plan = MadeAudit.Session(seed);
        Drift drift = new("cheek", slope) { Span = new FaultSpan(plan.Trials[6].OnsetS - 1, plan.Trials[6].EndS + 1) };

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(plan, drift));

        Assert.Equal(isAbove ? [7] : [], MadeAudit.RejectedFor(result, "cheek", "drift"));
        Assert.Contains(7, MadeAudit.FoundFor(result, "cheek", "drift"));
    }

    [Theory]
    [InlineData(261, 0.2 / 1.5, true)]
    [InlineData(262, 0.2 / 0.7, false)]
    public void TooLittleHeadroomIsRejected(ulong seed, double headroom, bool isAbove)
    {
        SessionPlan plan = MadeAudit.Session(seed);
        double rail = 1000;
        Fault[] faults = [new HeaderRail("eye", rail), new Drift("eye", 0, rail * (1 - headroom))];

        RecordingResult result = MadeAudit.Of(plan with { Amplifier = plan.Amplifier with { OffsetUv = 0, SettlingUvPerMin = 0 }, Faults = [.. faults] });

        Assert.Equal(isAbove ? plan.Trials.Length : 0, MadeAudit.RejectedFor(result, "eye", "drift").Length);
        Assert.Equal(plan.Trials.Length, MadeAudit.FoundFor(result, "eye", "drift").Length);
    }

    [Theory]
    [InlineData(271, 0.1, 2000)]
    [InlineData(272, 0.5, 2000)]
    [InlineData(273, 1.5, 2000)]
    [InlineData(274, 0.1, 1000)]
    [InlineData(275, 0.5, 1024)]
    public void TwoJoinedNodesAreRejectedAsABridge(ulong seed, double kohm, int rateHz)
    {
        SessionPlan plan = MadeAudit.Session(seed, rateHz);

        RecordingResult result = MadeAudit.Of(plan with { Faults = [ElectrodeBridge.TwoNodes("cheek", "eye", kohm)] });

        Assert.Equal(Grade.Reject, MadeAudit.Channel(result, "cheek").Verdict);
        Assert.Equal(plan.Trials.Length, MadeAudit.RejectedFor(result, "cheek", "bridge").Length);
        Assert.Equal(plan.Trials.Length, MadeAudit.RejectedFor(result, "eye", "bridge").Length);
        Assert.Empty(MadeAudit.FoundFor(result, "brow", "bridge"));
    }

    [Fact]
    public void OneJoinedNodeIsSuspectedInMostSessions()
    {
        ImmutableArray<string> missed =
        [
            .. Enumerable.Range(0, 8)
                .Where(i => MadeAudit.FoundFor(
                    MadeAudit.Of(MadeAudit.Session(280 + (ulong)i, 2000, 12) with { Faults = [ElectrodeBridge.OneNode("cheek", "eye", 0.03)] }),
                    "cheek",
                    "bridge").Length == 0)
                .Select(i => FormattableString.Invariant($"seed {280 + i}")),
        ];

        // With electrode noise of 0.5 µV and an amplifier of 0.45 µV, 90 to 100 % were found in simulations of this model; absence clears nothing.
        Assert.True(missed.Length <= 2, FormattableString.Invariant($"not suspected in {missed.Length} of 8: {string.Join(", ", missed)}"));
    }

    [Fact]
    public void IdenticalChannelsAreABridge()
    {
        RecordingResult result = MadeAudit.Of(MadeAudit.Session(291) with { Faults = [new IdenticalChannels("cheek", "brow")] });

        Assert.Equal(Grade.Reject, MadeAudit.Channel(result, "cheek").Verdict);
        Assert.Contains("bridge", MadeAudit.Channel(result, "brow").Reasons, StringComparer.Ordinal);
    }

    [Fact]
    public void ABridgeThatBeginsInMidSessionSparesTheTrialsBefore()
    {
        SessionPlan plan = MadeAudit.Session(292, 2000, 16);
        decimal from = plan.Trials[11].OnsetS - 1.5M;

        RecordingResult result = MadeAudit.Of(plan with { Faults = [ElectrodeBridge.TwoNodes("cheek", "eye", 0.3) with { Span = new FaultSpan(from, null) }] });

        Assert.Equal(Enumerable.Range(12, plan.Trials.Length - 11), MadeAudit.RejectedFor(result, "cheek", "bridge"));
    }

    [Fact]
    public void ADeadChannelIsFlatAndNothingElseIsClaimed()
    {
        SessionPlan plan = MadeAudit.Session(293);

        RecordingResult result = MadeAudit.Of(plan with { Faults = [new Flatline("brow")] });

        Assert.Equal(plan.Trials.Length, MadeAudit.RejectedFor(result, "brow", "flatline").Length);
        Assert.Equal(Grade.Reject, MadeAudit.Channel(result, "brow").Verdict);
        Assert.All(result.Channels, channel => Assert.Empty(MadeAudit.FoundFor(result, channel.Name, "bridge")));
    }
}
