using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Pops are found and counted; motor units, stimulus coupling, contractions and motion are none. Truth: the plan of the session.</summary>
public sealed class PopTests
{
    private const string Reason = "pops";

    // Energy of a spike of 1 µV: 3/8 of its 2 ms.
    private const double SpikeEnergy = 0.375 * ElectrodePops.DurationS;

    public static TheoryData<int> Sessions => [0, 1, 2, 3, 4, 5];

    [Theory]
    [MemberData(nameof(Sessions))]
    public void TooManyAreRejectedAndFewAreQuestionableInTheirTrialsOnly(int session)
    {
        SessionPlan plan = Session(860 + session, session);

        // 30 a minute are 1.5 in 3 s, and 3 at least: 5 are one and a half times the limit, 2 are 0.7 of it.
        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusersAndMotion(
            plan,
            Pops(plan, "cheek", 6, 200, 5),
            Pops(plan, "cheek", 8, 200, 2),
            Pops(plan, "eye", 9, 200, 5),
            Pops(plan, "eye", 12, 200, 2)));

        Assert.Equal([6, 8], MadeAudit.FoundFor(result, "cheek", Reason));
        Assert.Equal([9, 12], MadeAudit.FoundFor(result, "eye", Reason));
        Assert.Contains(6, MadeAudit.RejectedFor(result, "cheek", Reason));
        Assert.Contains(9, MadeAudit.RejectedFor(result, "eye", Reason));
        Assert.Empty(MadeAudit.FoundFor(result, "brow", Reason));
        Assert.Equal([5.0, 2.0], CountsOf(result, "cheek", [6, 8]));
    }

    [Theory]
    [MemberData(nameof(Sessions))]
    public void APopThatHoldsMostOfTheEnergyIsRejectedAndASmallerOneIsNot(int session)
    {
        SessionPlan plan = Session(870 + session, session);

        // Trials 6 and 8 have an answer of 9 µV at the cheek, noise of 0.84 µV, crosstalk and mains: shares of 75 and 35 %.
        const double trialEnergy = 3 * ((9 * 9) + 0.7 + 0.3);
        double high = Math.Sqrt(trialEnergy * 0.75 / 0.25 / SpikeEnergy);
        double low = Math.Sqrt(trialEnergy * 0.35 / 0.65 / SpikeEnergy);
        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(plan, Pops(plan, "cheek", 6, high, 1), Pops(plan, "cheek", 8, low, 1)));

        Assert.Equal([6], MadeAudit.RejectedFor(result, "cheek", Reason));
        Assert.Equal([6, 8], MadeAudit.FoundFor(result, "cheek", Reason));
        Assert.All(MadeAudit.Sites, site => Assert.Empty(MadeAudit.FoundFor(result, site, "noise-floor")));
    }

    [Theory]
    [InlineData(881, 30, 8)]
    [InlineData(882, 60, 12)]
    [InlineData(883, 100, 20)]
    [InlineData(884, 40, 35)]
    public void AMotorUnitIsNoPop(ulong seed, double heightUv, double firingHz)
    {
        SessionPlan plan = MadeAudit.Session(seed);

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(
            plan, new MotorUnitTrain("cheek", heightUv, firingHz) { Span = new FaultSpan(plan.Trials[5].OnsetS - 1, plan.Trials[7].EndS + 1) }));

        Assert.All(MadeAudit.Sites, site => Assert.Empty(MadeAudit.FoundFor(result, site, Reason)));
        Assert.Empty(MadeAudit.FoundFor(result, "cheek", "noise-floor"));
    }

    /// <summary>A blink comes with a burst of the lid muscle: one spike in it is worth a look; at the cheek it is a pop like any other.</summary>
    [Fact]
    public void ASpikeInABlinkIsQuestionableAtMost()
    {
        SessionPlan plan = new Protocol { ScoredTrials = 8, RestS = 14, TaskS = 4, PauseS = 3 }.Plan(898);
        FaultSpan trial = FaultSpan.Of(plan.Trials[5]);

        RecordingResult result = MadeAudit.Of(plan with
        {
            Faults = [.. new[] { "cheek", "eye" }.SelectMany(site => new Fault[] { new ElectrodePops(site, 300, 1) { Span = trial }, new Blinks(site, 200, 2.6M) { Span = trial } })],
        });

        Assert.Equal([6], MadeAudit.RejectedFor(result, "cheek", Reason));
        Assert.Equal([6], MadeAudit.FoundFor(result, "eye", Reason));
        Assert.Empty(MadeAudit.RejectedFor(result, "eye", Reason));
    }

    /// <summary>Where nobody contracts, only the likeness of its spikes tells a unit from pops; one a second is too slow to tell.</summary>
    [Theory]
    [InlineData(895, 7, true)]
    [InlineData(896, 9, true)]
    [InlineData(897, 1, false)]
    public void InAQuietSessionASlowUnitIsToldByItsRepeatedShape(ulong seed, double firingHz, bool isUnit)
    {
        SessionPlan plan = new Protocol { ScoredTrials = 8, RestS = 60, TaskS = 4, PauseS = 3, ContractionUv = 2 }.Plan(seed);

        RecordingResult result = MadeAudit.Of(plan with
        {
            Faults = [new MotorUnitTrain("cheek", 40, firingHz) { Span = new FaultSpan(plan.Trials[5].OnsetS - 1, plan.Trials[5].EndS + 1) }],
        });

        Assert.Equal(isUnit ? [] : [6], MadeAudit.FoundFor(result, "cheek", Reason));
    }

    [Theory]
    [InlineData(885, 0)]
    [InlineData(886, 0.018)]
    [InlineData(887, 0.5)]
    public void ASpikeThatComesWithEveryStimulusIsNoPopButOneMoreIs(ulong seed, double delayS)
    {
        SessionPlan plan = MadeAudit.Session(seed);

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(
            plan, new StimulusSpikes("brow", 800, (decimal)delayS), Pops(plan, "brow", 6, 300, 1)));

        Assert.Equal([6], MadeAudit.FoundFor(result, "brow", Reason));
        Assert.Empty(MadeAudit.FoundFor(result, "brow", "noise-floor"));
        Finding told = Assert.Single(result.Information, finding => string.Equals(finding.Reason, Reason, StringComparison.Ordinal));
        Assert.Equal(["brow"], told.Channels.ToArray(), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData(891, 25)]
    [InlineData(892, 60)]
    [InlineData(893, 150)]
    public void ContractionsBlinksAndMotionAreNoPops(ulong seed, double contractionUv)
    {
        SessionPlan plan = new Protocol { ScoredTrials = 8, RestS = 14, TaskS = 4, PauseS = 3, ContractionUv = contractionUv }.Plan(seed);

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusersAndMotion(plan, new Blinks("eye", 300, 4.5M), new Motion(["cheek"], 100)));

        Assert.All(MadeAudit.Sites, site => Assert.Empty(MadeAudit.FoundFor(result, site, Reason)));
    }

    [Fact]
    public void BelowFiveHundredHertzNothingIsSaid()
    {
        SessionPlan plan = MadeAudit.Session(894, new Rational(4974, 10));

        RecordingResult result = MadeAudit.Of(MadeAudit.WithConfusers(plan, Pops(plan, "cheek", 6, 500, 5)));

        Assert.All(result.Channels, channel => Assert.All(
            channel.Cells, cell => Assert.Contains(new NotAssessed(Reason, "sampled below 500 Hz"), cell.NotAssessed)));
        Assert.Empty(MadeAudit.FoundFor(result, "cheek", Reason));
    }

    private static SessionPlan Session(int seed, int number) =>
        MadeAudit.Session((ulong)seed, MadeAudit.Rates[number % (MadeAudit.Rates.Length - 1)]);

    private static ElectrodePops Pops(SessionPlan plan, string site, int trial, double heightUv, int count) =>
        new(site, heightUv, count) { Span = FaultSpan.Of(plan.Trials[trial - 1]) };

    private static double[] CountsOf(RecordingResult result, string site, int[] trials) =>
    [
        .. trials.Select(trial => MadeAudit.Channel(result, site).Cells[trial - 1].Measures
            .Single(one => string.Equals(one.Value.Measure, "pops", StringComparison.Ordinal)).Value.Value!.Value),
    ];
}
