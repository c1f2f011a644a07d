using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Tests.Synthesis;

public sealed class MadeRecordingTests
{
    [Fact]
    public void TheSamePlanGivesTheSameCodes()
    {
        SessionPlan plan = new() { Seed = 1, DurationS = 5 };

        MadeRecording one = MadeRecording.Make(plan);
        MadeRecording other = MadeRecording.Make(plan);

        Assert.True(one.CodesOf("cheek").SequenceEqual(other.CodesOf("cheek")));
    }

    [Fact]
    public void AnotherSeedGivesAnotherSignal()
    {
        SessionPlan plan = new() { Seed = 1, DurationS = 20, Amplifier = new AmplifierPlan { SettlingUvPerMin = 0 } };

        double[] one = Plain.Samples(MadeRecording.Make(plan), "cheek");
        double[] other = Plain.Samples(MadeRecording.Make(plan with { Seed = 2 }), "cheek");

        Assert.True(Math.Abs(Plain.Correlation(one, other)) < 0.03);
    }

    [Fact]
    public void AFaultAtOneSiteLeavesTheOthersAsTheyWere()
    {
        SessionPlan plan = new() { Seed = 1, DurationS = 5 };

        MadeRecording clean = MadeRecording.Make(plan);
        MadeRecording faulty = MadeRecording.Make(plan with { Faults = [new MainsPickup(["cheek"], 5), new Motion(["cheek"], 20)] });

        Assert.False(clean.CodesOf("cheek").SequenceEqual(faulty.CodesOf("cheek")));
        Assert.True(clean.CodesOf("brow").SequenceEqual(faulty.CodesOf("brow")));
        Assert.True(clean.CodesOf("eye").SequenceEqual(faulty.CodesOf("eye")));
    }

    [Fact]
    public void AFaultOutsideItsStretchLeavesTheSamplesAsTheyWere()
    {
        SessionPlan plan = new() { Seed = 1, DurationS = 5 };

        MadeRecording clean = MadeRecording.Make(plan);
        MadeRecording faulty = MadeRecording.Make(
            plan with { Faults = [ElectrodeBridge.TwoNodes("cheek", "eye", 1) with { Span = new FaultSpan(2, 3) }] });

        Assert.True(clean.CodesOf("cheek")[..4000].SequenceEqual(faulty.CodesOf("cheek")[..4000]));
        Assert.False(clean.CodesOf("cheek")[4000..6000].SequenceEqual(faulty.CodesOf("cheek")[4000..6000]));
        Assert.True(clean.CodesOf("cheek")[6000..].SequenceEqual(faulty.CodesOf("cheek")[6000..]));
    }

    [Fact]
    public void ChannelsWithoutABridgeHaveNothingInCommon()
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan
        {
            Seed = 3,
            DurationS = 60,
            Amplifier = new AmplifierPlan { SettlingUvPerMin = 0 },
        });

        // SD of a correlation of about 60 s x 2 x 300 Hz independent values: 0.005.
        double[] cheek = Plain.Samples(made, "cheek");
        Assert.True(Math.Abs(Plain.Correlation(cheek, Plain.Samples(made, "eye"))) < 0.025);
        Assert.True(Math.Abs(Plain.Correlation(cheek, Plain.Samples(made, "brow"))) < 0.025);
    }

    [Fact]
    public void ATrialHasTheAmplitudeThatWasAskedFor()
    {
        SessionPlan plan = new Protocol().Plan(4);
        PlannedTrial contraction = plan.Trials[1];

        double[] samples = Plain.Samples(MadeRecording.Make(plan), "cheek", contraction.OnsetS, contraction.EndS);

        // 25 µV of muscle and 0.84 µV of noise, stated for 430 Hz of the 1000: 25.05. 5 s scatter by about 2 %.
        Assert.Equal(25.05, Plain.Rms(samples), 1.5);
    }

    [Fact]
    public void CodesStayWithinTheRailsAndTheirStepIsHonest()
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan
        {
            Seed = 1,
            DurationS = 1,
            Faults = [new HeaderRail("eye", 2), new Drift("cheek", 0, 5000)],
        });

        Assert.Equal(-20, made.LowestCodeOf("eye"));
        Assert.All(made.CodesOf("eye").ToArray(), code => Assert.InRange(code, -20, 20));
        Assert.All(made.CodesOf("cheek").ToArray(), code => Assert.Equal(short.MaxValue, code));
        Assert.Equal(3276.7, made.ChannelOf("cheek").UpperRail!.Value, 1e-9);
        Assert.Equal(-3276.8, made.ChannelOf("cheek").LowerRail!.Value, 1e-9);
    }

    [Fact]
    public void TheOpenedRecordingGivesTheCodesTimesTheStep()
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan { Seed = 1, DurationS = 2 });
        using Recording recording = made.Open();

        double[] block = new double[100];
        recording.Samples.Read(1, 1234, block);

        Assert.Equal(Plain.Samples(made, "brow")[1234..1334], block);
        Assert.Equal(2.0, recording.DurationS);
        Assert.Throws<ArgumentOutOfRangeException>(() => recording.Samples.Read(1, 3950, block));
    }

    [Fact]
    public void ReadingGoesOnBehindAGap()
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan
        {
            Seed = 1,
            DurationS = 4,
            Faults = [new RecordingGap { Span = new FaultSpan(1, 2.5M) }],
        });
        using Recording recording = made.Open();

        double[] stored = new double[5000];
        recording.Samples.Read(0, 0, stored);

        Assert.Equal("EDF+D", recording.Format);
        ImmutableArray<Stretch> expected = [new(0, 2000, 0), new(5000, 3000, 2000)];
        Assert.True(expected.SequenceEqual(recording.Channels[0].Stretches));
        double[] all = Plain.Samples(made, "cheek");
        Assert.Equal([.. all[..2000], .. all[5000..]], stored);
        Truth truth = Assert.Single(made.Truths);
        Assert.Equal((ReasonCode.Dropout, "gap", 1500.0), (truth.Reason, truth.Measure, truth.Size));
    }

    [Fact]
    public void ATrialBehindTheEndIsADropoutOfItsLostShare()
    {
        PlannedTrial trial = new() { OnsetS = 9, DurationS = 4, Label = "meadow" };

        MadeRecording made = MadeRecording.Make(new SessionPlan { Seed = 1, DurationS = 10, Trials = [trial] });

        Truth truth = Assert.Single(made.Truths);
        Assert.Equal((ReasonCode.Dropout, "missing", 75.0), (truth.Reason, truth.Measure, truth.Size));
        Assert.Equal(1, Assert.Single(truth.Trials));
    }

    [Fact]
    public void ImpedancesLieAroundFiveKiloohms()
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan { Seed = 1, DurationS = 1 });

        foreach (SitePlan site in made.Plan.Sites)
        {
            (double first, double second) = made.KohmOf(site.Name);
            Assert.InRange(first, 3.5, 6.5);
            Assert.InRange(second, 3.5, 6.5);
            Assert.NotEqual(first, second);
        }
    }
}
