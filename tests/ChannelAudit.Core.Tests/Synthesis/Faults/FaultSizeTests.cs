using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Tests.Synthesis.Faults;

/// <summary>The truth of each fault against a plain formula on the samples.</summary>
public sealed class FaultSizeTests
{
    [Fact]
    public void MainsHasTheAmplitudeThatWasAskedFor()
    {
        MadeRecording made = Quiet.Make(20, new MainsPickup(["cheek", "eye"], 5) { Span = new FaultSpan(4, 14) });

        double[] inside = Plain.Samples(made, "cheek", 4, 14);
        double power = new[] { 50.0, 150, 250 }.Sum(hz => Math.Pow(Plain.SineRms(inside, hz, 2000), 2));

        Assert.Equal(5, Math.Sqrt(power), 1e-3);
        Assert.Equal(5, Plain.Rms(inside), 1e-3);
        Assert.Equal(0, Plain.Rms(Plain.Samples(made, "cheek", 0, 4)), 1e-9);
        Assert.True(made.CodesOf("cheek").SequenceEqual(made.CodesOf("eye")));
        Assert.Equal(5, Assert.Single(made.Truths).Size);
    }

    [Fact]
    public void MainsThatWandersSwingsAroundItsFrequency()
    {
        MadeRecording made = Quiet.Make(60, new MainsPickup(["cheek"], 5, 50) { Harmonics = [1], WanderHz = 0.1 });
        double[] samples = Plain.Samples(made, "cheek");

        // A quarter of the period in, the frequency is 50.1 Hz: count the turns in the seconds around it, by upward crossings.
        Assert.Equal(50.1, CrossingRate(samples[(10 * 2000)..(20 * 2000)]), 0.01);
        Assert.Equal(49.9, CrossingRate(samples[(40 * 2000)..(50 * 2000)]), 0.01);
    }

    [Fact]
    public void ANarrowPeakHasItsAmplitudeAndFrequency()
    {
        MadeRecording made = Quiet.Make(10, new NarrowPeak(["brow"], 3, 85));

        Assert.Equal(3, Plain.SineRms(Plain.Samples(made, "brow"), 85, 2000), 1e-3);
        Assert.Equal(ReasonCode.NarrowBand, Assert.Single(made.Truths).Reason);
    }

    [Theory]
    [InlineData(0.5, 66.667)]
    [InlineData(0.8, 40.967)]
    [InlineData(0.9, 28.713)]
    [InlineData(0.95, 20.217)]
    [InlineData(0.99, 9.011)]
    public void ASineAgainstAHiddenRailIsClippedByTwoOverPiArccos(double rail, double percent)
    {
        // The project's check row 9, (2/π)·acos(c/A): derived by hand. 100 µV amplitude, 73.1 Hz, 20 s.
        MadeRecording made = Quiet.Make(
            20, new NarrowPeak(["cheek"], 100 / Math.Sqrt(2), 73.1), new HiddenRail("cheek", 100 * rail));

        Truth truth = TruthOf(made, "clipped");

        Assert.Equal(percent, truth.Size, 0.1);
        Assert.Equal(100 * rail, Plain.Samples(made, "cheek").Max(), 1e-6);
    }

    [Fact]
    public void BlocksAtARailMakeTheShareAndTheRunThatWereAskedFor()
    {
        PlannedTrial trial = new() { OnsetS = 2, DurationS = 3, Label = "meadow" };
        SessionPlan plan = new()
        {
            Seed = 1,
            DurationS = 10,
            Trials = [trial],
            Faults = [new RailBlocks("eye", 1.5, 9) { Span = FaultSpan.Of(trial) }],
        };

        MadeRecording made = MadeRecording.Make(plan);
        int count = made.CodesOf("eye").Count(short.MaxValue);

        Assert.Equal(90, count);
        Assert.Equal(1.5, TruthOf(made, "clipped").Size, 1e-9);
        Assert.Equal(4.5, TruthOf(made, "clipped_run").Size, 1e-9);
        Assert.All(made.Truths, truth => Assert.Equal(1, Assert.Single(truth.Trials)));
    }

    [Fact]
    public void AFlatlineHoldsItsLastCode()
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan
        {
            Seed = 1,
            DurationS = 4,
            Faults = [new Flatline("brow") { Span = new FaultSpan(1, 1.3M) }],
        });

        ReadOnlySpan<int> codes = made.CodesOf("brow");

        Assert.Equal(-1, codes[2000..2600].IndexOfAnyExcept(codes[1999]));
        Assert.InRange(Assert.Single(made.Truths).Size, 300.5, 303);
    }

    [Fact]
    public void AToggleUsesTwoCodesAndStaysShortOnEach()
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan
        {
            Seed = 1,
            DurationS = 4,
            Faults = [new Flatline("brow") { Toggles = true, Span = new FaultSpan(1, 2) }],
        });

        int[] codes = made.CodesOf("brow")[2000..4000].ToArray();
        int longest = 0;
        for (int i = 0, run = 0; i < codes.Length; i++)
        {
            run = i > 0 && codes[i] == codes[i - 1] ? run + 1 : 1;
            longest = Math.Max(longest, run);
        }

        Assert.Equal(2, codes.Distinct().Count());
        Assert.Equal(1, codes.Max() - codes.Min());
        Assert.InRange(longest, 4, 5);
        Assert.Equal(1000, Assert.Single(made.Truths).Size);
    }

    [Fact]
    public void ADriftHasItsSlopeAndLeavesItsHeadroom()
    {
        SessionPlan plan = new() { Seed = 1, DurationS = 60, Faults = [new Drift("cheek", 600, 1000)] };

        MadeRecording made = MadeRecording.Make(plan);
        double[] samples = Plain.Samples(made, "cheek");
        double first = Plain.Mean(samples[..2000]);
        double last = Plain.Mean(samples[^2000..]);

        // 59 s lie between the middles of the two seconds. The end is the worst level.
        Truth slope = TruthOf(made, "drift_slope");
        Assert.Equal((last - first) * 60 / 59, slope.Size, 0.5);
        Truth headroom = TruthOf(made, "headroom");
        Assert.Equal(100 * (1 - (last / 3276.7)), headroom.Size, 0.3);
    }

    [Fact]
    public void AnAmplifierWithAHighpassHidesADrift()
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan
        {
            Seed = 1,
            DurationS = 30,
            Amplifier = new AmplifierPlan { HighpassHz = 10 },
            Faults = [new Drift("cheek", 600, 1000)],
        });

        Assert.True(Math.Abs(Plain.Mean(Plain.Samples(made, "cheek"))) < 0.2);
    }

    [Fact]
    public void TheRestingLevelRisesAsFastAsAskedFor()
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan
        {
            Seed = 1,
            DurationS = 240,
            Sites = [SitePlan.Face[0] with { RestUv = 2 }],
            Amplifier = new AmplifierPlan { SettlingUvPerMin = 0, Bits = 24, StepUv = 0.01 },
            Faults = [new LevelTrend("cheek", 20)],
        });
        double[] samples = Plain.Samples(made, "cheek");

        // In the band of 20 to 450 Hz; 3 minutes lie between the middles of the first and the last.
        double early = Math.Sqrt(Plain.Density(samples[..120_000], 2000, 20, 450));
        double late = Math.Sqrt(Plain.Density(samples[^120_000..], 2000, 20, 450));
        double middle = Math.Sqrt(Plain.Density(samples[180_000..300_000], 2000, 20, 450));

        Assert.Equal(20, 100 * (late - early) / middle / 3, 1.0);
    }

    [Fact]
    public void CrosstalkHasItsShareAndDiesAtHighFrequencies()
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan
        {
            Seed = 1,
            DurationS = 20,
            Sites = [Quiet.Sites[0] with { RestUv = 25 }, Quiet.Sites[1]],
            Amplifier = Quiet.Amplifier,
            Faults = [new Crosstalk("cheek", "brow", 0.2)],
        });
        double[] cheek = Plain.Samples(made, "cheek");
        double[] brow = Plain.Samples(made, "brow");

        Assert.Equal(0.2, Plain.Rms(brow) / Plain.Rms(cheek), 1e-3);
        double low = Plain.Density(brow, 2000, 50, 100) / Plain.Density(cheek, 2000, 50, 100);
        double high = Plain.Density(brow, 2000, 350, 450) / Plain.Density(cheek, 2000, 350, 450);
        Assert.True(high < 0.1 * low);

        // Tissue conducts without delay (quasi-static approximation: common knowledge of volume conduction): what is seen is in step with the muscle.
        Assert.True(Plain.Correlation(cheek, brow) > 0.75);
        Assert.True(Plain.Correlation(cheek[4..], brow[..^4]) < Plain.Correlation(cheek, brow));
        Assert.True(Plain.Correlation(cheek[..^4], brow[4..]) < Plain.Correlation(cheek, brow));
    }

    [Fact]
    public void ACommonSourceReachesEachSiteByItsShare()
    {
        MadeRecording made = Quiet.Make(
            20, new CommonSource(20, [new RemoteShare("cheek", 1, 0.5), new RemoteShare("brow", 0.2, -0.25)]));
        double[] cheek = Plain.Samples(made, "cheek");
        double[] brow = Plain.Samples(made, "brow");

        Assert.Equal(10, Plain.Rms(cheek), 0.4);
        Assert.Equal(-1, Plain.Correlation(cheek, brow), 1e-6);
        Assert.Equal(0.5, Plain.Rms(brow) / Plain.Rms(cheek), 1e-3);
        Assert.Equal(0, Plain.Rms(Plain.Samples(made, "eye")), 1e-9);
    }

    [Fact]
    public void MotionIsTheSameInAllItsSitesAndSlow()
    {
        MadeRecording made = Quiet.Make(60, new Motion(["cheek", "eye"], 20));
        double[] cheek = Plain.Samples(made, "cheek");

        // 60 s of a band 8 Hz wide scatter by about 4 %.
        Assert.Equal(20, Plain.Rms(cheek), 2.5);
        Assert.True(made.CodesOf("cheek").SequenceEqual(made.CodesOf("eye")));
        double seen = Math.Sqrt(Plain.Density(cheek, 2000, 2, 15) * 14);
        Assert.Equal(Assert.Single(made.Truths).Size, seen, 2.5);
    }

    [Fact]
    public void BlinksAreBumpsOfTheirHeightAndLength()
    {
        double[] samples = Plain.Samples(Quiet.Make(20, new Blinks("eye", 150, 5)), "eye");

        // At 2.5, 7.5, 12.5 and 17.5 s; the mean of a raised cosine is half its height.
        Assert.Equal(150, samples.Max(), 0.01);
        Assert.Equal(4 * 0.25 / 20 * 75, Plain.Mean(samples), 0.01);
        Assert.Equal(0, Plain.Rms(samples[..5000]), 1e-9);
        Assert.Equal(150, samples[5250], 0.01);
    }

    [Fact]
    public void PopsAreShortSpikesOfTheirHeightAndNumber()
    {
        MadeRecording made = Quiet.Make(10, new ElectrodePops("cheek", 120, 8) { Span = new FaultSpan(2, 8) });
        double[] samples = Plain.Samples(made, "cheek");

        int[] tops = [.. Enumerable.Range(0, samples.Length).Where(i => Math.Abs(samples[i]) > 119.9)];
        Assert.Equal(8, tops.Length);
        Assert.Equal(8, Assert.Single(made.Truths).Size);
        Assert.All(tops, top => Assert.InRange(top, 4000, 16_000));

        // A raised cosine squared holds 3/8 of its length.
        Assert.Equal(8 * 120 * 120 * 0.375 * 0.002, samples.Sum(value => value * value) / 2000, 0.1);
    }

    [Fact]
    public void SpikesOfAStimulusComeEquallyLate()
    {
        SessionPlan plan = new()
        {
            Seed = 1,
            DurationS = 10,
            Sites = Quiet.Sites,
            Amplifier = Quiet.Amplifier,
            Trials = [new() { OnsetS = 2, DurationS = 1, Label = "meadow" }, new() { OnsetS = 5, DurationS = 1, Label = "meadow" }],
            Faults = [new StimulusSpikes("brow", 90, 0.02M)],
        };

        double[] samples = Plain.Samples(MadeRecording.Make(plan), "brow");

        Assert.Equal([4040, 10_040], Enumerable.Range(0, samples.Length).Where(i => Math.Abs(samples[i]) > 89.9));
    }

    [Fact]
    public void AMotorUnitFiresAtItsRateWithItsHeight()
    {
        double[] samples = Plain.Samples(Quiet.Make(20, new MotorUnitTrain("eye", 50, 10)), "eye");

        int[] tops = [.. Enumerable.Range(1, samples.Length - 2).Where(i => samples[i] > 40 && samples[i] >= samples[i - 1] && samples[i] > samples[i + 1])];
        Assert.InRange(tops.Length, 190, 210);
        Assert.Equal(50, tops.Average(top => samples[top]), 1.5);
    }

    [Fact]
    public void BroadbandNoiseHasItsAmplitudeInTheBandAndIsWhite()
    {
        MadeRecording made = Quiet.Make(60, new BroadbandNoise(["cheek", "eye"], 10));
        double[] cheek = Plain.Samples(made, "cheek");

        Assert.Equal(Assert.Single(made.Truths).Size, Math.Sqrt(430 * Plain.Density(cheek, 2000, 20, 450)), 0.2);
        Assert.Equal(1, Plain.Density(cheek, 2000, 360, 450) / Plain.Density(cheek, 2000, 80, 150), 0.06);
        Assert.InRange(Plain.Correlation(cheek, Plain.Samples(made, "eye")), -0.02, 0.02);
    }

    [Fact]
    public void AChannelStoredTwiceIsTheSameCodeByCode()
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan
        {
            Seed = 1,
            DurationS = 2,
            Faults = [new IdenticalChannels("cheek", "eye")],
        });

        Assert.True(made.CodesOf("cheek").SequenceEqual(made.CodesOf("eye")));
        Assert.Equal(ReasonCode.Bridge, Assert.Single(made.Truths).Reason);
    }

    [Fact]
    public void SamplesThatAreMissingSplitOneChannelOnly()
    {
        MadeRecording made = MadeRecording.Make(new SessionPlan
        {
            Seed = 1,
            DurationS = 4,
            Faults = [new MissingSamples("brow") { Span = new FaultSpan(1, 1.2M) }],
        });

        Assert.Single(made.ChannelOf("cheek").Stretches);
        Assert.Equal(7600, made.ChannelOf("brow").StoredLength);
        Assert.Equal(200, Assert.Single(made.Truths).Size, 1e-9);
    }

    [Theory]
    [InlineData(0.03, 1, 0.1)]
    [InlineData(0.03, 1, 0.5)]
    [InlineData(5, 1, 0.1)]
    [InlineData(0.03, 2, 0.1)]
    [InlineData(1.5, 2, 0.1)]
    public void ABridgeShowsTheCorrelationAtRestThatItsTruthSays(double kohm, int joints, double asymmetry)
    {
        ElectrodeBridge bridge = joints == 1
            ? ElectrodeBridge.OneNode("cheek", "eye", kohm)
            : ElectrodeBridge.TwoNodes("cheek", "eye", kohm);
        MadeRecording made = MadeRecording.Make(new SessionPlan
        {
            Seed = 9,
            DurationS = 30,
            Sites = [.. SitePlan.Face.Select(site => site with { Asymmetry = asymmetry })],
            Faults = [bridge],
        });
        double[] a = Plain.Samples(made, "cheek");
        double[] b = Plain.Samples(made, "eye");

        double measured = Plain.CrossDensity(a, b, 2000, 30, 250)
            / Math.Sqrt(Plain.Density(a, 2000, 30, 250) * Plain.Density(b, 2000, 30, 250));

        Assert.Equal(Assert.Single(made.Truths).Size, measured, 0.03);
    }

    [Fact]
    public void ABridgeWithinAPairLeavesTheGainThatItsTruthSays()
    {
        SessionPlan plan = new() { Seed = 9, DurationS = 20, Sites = [Quiet.Sites[0] with { RestUv = 25, Asymmetry = 0 }], Amplifier = Quiet.Amplifier };
        double free = Plain.Rms(Plain.Samples(MadeRecording.Make(plan), "cheek"));

        MadeRecording made = MadeRecording.Make(plan with { Faults = [ElectrodeBridge.WithinPair("cheek", 2)] });

        Truth truth = Assert.Single(made.Truths);
        Assert.Equal(ReasonCode.WeakResponse, truth.Reason);
        Assert.Equal(truth.Size, Plain.Rms(Plain.Samples(made, "cheek")) / free, 1e-4);
    }

    private static Truth TruthOf(MadeRecording made, string measure) =>
        made.Truths.Single(truth => string.Equals(truth.Measure, measure, StringComparison.Ordinal));

    private static double CrossingRate(double[] samples)
    {
        List<double> times = [];
        for (int i = 1; i < samples.Length; i++)
        {
            if (samples[i - 1] < 0 && samples[i] >= 0)
            {
                times.Add(i - (samples[i] / (samples[i] - samples[i - 1])));
            }
        }

        return 2000 * (times.Count - 1) / (times[^1] - times[0]);
    }
}
