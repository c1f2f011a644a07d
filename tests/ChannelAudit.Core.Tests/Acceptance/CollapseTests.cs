using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>The two electrodes of a site joined, with a task and without. Truth: the resistance of the plan between contacts of 5 kΩ.</summary>
public sealed class CollapseTests
{
    private const string Words = "gel between this site's own electrodes, a dead pair, or a shorted input";

    [Theory]
    [InlineData(851, 0, 2000, true)]
    [InlineData(852, 0.1, 1000, true)]
    [InlineData(853, 0.5, 2048, true)]
    [InlineData(854, 0, 1000, false)]
    [InlineData(855, 0.1, 2000, false)]
    [InlineData(856, 0.5, 1000, false)]
    [InlineData(857, 0.5, 2000, false)]
    public void JoinedElectrodesOfASiteAreFoundInAllItsTrials(ulong seed, double kohm, int rateHz, bool withTask)
    {
        SessionPlan plan = Session(seed, rateHz, withTask);

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(plan, ElectrodeBridge.WithinPair("brow", kohm)));

        ChannelResult brow = MadeAudit.Channel(result, "brow");
        Finding finding = brow.Findings.Single(one => string.Equals(one.Cause, Words, StringComparison.Ordinal));
        Assert.Equal((ReasonCode.WeakResponse, Grade.Questionable), (finding.Reason, finding.Grade));
        Assert.Equal(["whiteness", "rest_excess", "band_p95"], finding.Evidence.Select(one => one.Measure), StringComparer.Ordinal);
        Assert.All(brow.Cells, cell => Assert.Contains(ReasonCode.WeakResponse, cell.Reasons, StringComparer.Ordinal));

        // Of 25 µV 0.5 kΩ between contacts of 5 kΩ leave 1.2 µV, 8 dB above the amplifier's 0.45 µV: no reject of its own.
        Assert.Equal(withTask && kohm < 0.5 ? Grade.Reject : Grade.Questionable, brow.Verdict);
        Assert.DoesNotContain(brow.NotAssessed, open => string.Equals(open.Reason, ReasonCode.WeakResponse, StringComparison.Ordinal));
        Assert.All(
            result.Channels.Where(channel => !ReferenceEquals(channel, brow)),
            channel => Assert.DoesNotContain(ReasonCode.WeakResponse, channel.Reasons, StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(861, 5, 2000, true)]
    [InlineData(862, 5, 1000, false)]
    [InlineData(863, 10, 2000, false)]
    [InlineData(864, 20, 1000, true)]
    public void BehindAsMuchGelAsTheContactsThemselvesNothingCollapses(ulong seed, double kohm, int rateHz, bool withTask) =>
        Assert.Empty(Collapsed(MadeAudit.Of(MadeAudit.WithConfusers(Session(seed, rateHz, withTask), ElectrodeBridge.WithinPair("brow", kohm)))));

    /// <summary>Well-prepared contacts of 0.5 µV over muscles of half a microvolt, none of which does anything all session.</summary>
    [Theory]
    [InlineData(871, 2000)]
    [InlineData(872, 1000)]
    [InlineData(873, 2048)]
    [InlineData(874, 1000)]
    public void QuietMusclesThatNeverAnswerAreNotCollapsed(ulong seed, int rateHz)
    {
        SessionPlan plan = Session(seed, rateHz, false);
        plan = plan with
        {
            Sites = [.. plan.Sites.Select(site => site with { RestUv = 0.5 })],
            Trials = [.. plan.Trials.Select(trial => trial with { Activity = [] })],
        };

        Assert.Empty(Collapsed(MadeAudit.Of(plan)));
    }

    /// <summary>Without a stated noise of the amplifier 0.6 µV decides.</summary>
    [Theory]
    [InlineData(881, 0.45, true)]
    [InlineData(882, 0.7, false)]
    public void WithoutAStatedAmplifierAFixedNoiseIsAssumed(ulong seed, double noiseUv, bool isFound)
    {
        SessionPlan plan = Session(seed, 1000, false);
        plan = plan with { Amplifier = plan.Amplifier with { NoiseUv = noiseUv }, Faults = [ElectrodeBridge.WithinPair("brow", 0)] };
        using Recording recording = MadeRecording.Make(plan).Open();

        RecordingResult unstated = MadeAudit.Of(recording, MadeAudit.SetupOf(plan) with { Recording = new RecordingSetup() });

        Assert.Equal(isFound ? ["brow"] : [], Collapsed(unstated));
        Assert.Equal(["brow"], Collapsed(MadeAudit.Of(recording, plan)));
    }

    /// <summary>Without a task a limit on the size of a contraction is asked of nothing.</summary>
    [Fact]
    public void WhereOnlyATaskCouldTellItIsNotAssessedWithoutOne()
    {
        RecordingResult result = MadeAudit.Of(Session(891, 1000, false), string.Empty, "[weak-response]\nquestionable = [{ contraction_snr = 10.0 }]\n");

        Assert.All(result.Channels, channel => Assert.Contains(new NotAssessed(ReasonCode.WeakResponse, "no task asked of it"), channel.NotAssessed));
    }

    /// <summary>A limit that every channel reaches: only a contraction that counts as an answer says that the electrodes are connected.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void WhatAnsweredHasNotCollapsed(bool withTask)
    {
        RecordingResult result = MadeAudit.Of(
            Session(892, 1000, withTask), string.Empty, "[weak-response]\nquestionable = [{ contraction_snr = 12.0 }, { band_p95 = 1000.0 }]\n");

        Assert.Equal(withTask ? [] : MadeAudit.Sites, Collapsed(result), StringComparer.Ordinal);
        Assert.All(result.Channels.SelectMany(channel => channel.Cells), cell =>
            Assert.Equal(!withTask, cell.Reasons.Contains(ReasonCode.WeakResponse, StringComparer.Ordinal)));
    }

    /// <summary>No noise is as white as this limit asks: a task that is hardly answered stands for it, and for all trials.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void ATaskThatIsHardlyAnsweredStandsForWhiteness(bool withTask)
    {
        RecordingResult result = MadeAudit.Of(
            Session(895, 1000, withTask) with { Faults = [ElectrodeBridge.WithinPair("brow", 0)] },
            string.Empty,
            "[weak-response]\nquestionable = [{ contraction_snr = 12.0 }, { whiteness = 9.0, rest_excess = 1.3, band_p95 = 3.0 }]\n");

        Assert.Equal(withTask ? ["brow"] : [], Collapsed(result));
        Assert.All(MadeAudit.Channel(result, "brow").Cells, cell =>
            Assert.Equal(withTask, cell.Reasons.Contains(ReasonCode.WeakResponse, StringComparer.Ordinal)));
    }

    [Fact]
    public void WithoutALimitOfTheChannelEachTrialHoldsTheFinding()
    {
        RecordingResult result = MadeAudit.Of(
            Session(893, 1000, false) with { Faults = [ElectrodeBridge.WithinPair("brow", 0)] }, string.Empty, "[weak-response]\nchannel_questionable = []\nchannel_reject = []\n");

        Assert.Empty(Collapsed(result));
        Assert.All(MadeAudit.Channel(result, "brow").Cells, cell =>
        {
            Finding held = cell.Findings.Single(one => string.Equals(one.Reason, ReasonCode.WeakResponse, StringComparison.Ordinal));
            Assert.Equal((cell.Trial, "rest_excess"), (held.Trial, held.Evidence[1].Measure));
        });
    }

    [Fact]
    public void WhitenessShowsTheLimitOfWeakResponseWhereNoiseHasNone()
    {
        SessionPlan plan = Session(894, 1000, true);

        Assert.Equal(0.5, WhitenessLimit(MadeAudit.Of(plan)));
        Assert.Equal(0.7, WhitenessLimit(MadeAudit.Of(plan, string.Empty, "[noise-floor]\nquestionable = []\nreject = []\n")));
    }

    private static double? WhitenessLimit(RecordingResult result) =>
        result.Channels[0].Measures.Single(one => string.Equals(one.Value.Measure, "whiteness", StringComparison.Ordinal)).Questionable;

    private static string[] Collapsed(RecordingResult result) =>
        [.. result.Channels.Where(channel => channel.Findings.Any(one => string.Equals(one.Cause, Words, StringComparison.Ordinal))).Select(channel => channel.Name)];

    private static SessionPlan Session(ulong seed, int rateHz, bool withTask)
    {
        SessionPlan plan = MadeAudit.Session(seed, new Rational(rateHz, 1), 4);
        return withTask ? plan : plan with { Sites = [.. plan.Sites.Select(site => site with { Task = null })] };
    }

}
