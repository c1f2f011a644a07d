using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.Verdicts;
using Xunit;
using static ChannelAudit.Core.Tests.Acceptance.ScoredCells;
using MeasureValue = ChannelAudit.Measures.MeasureValue;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>
/// Findings as scoring will see them: with a filter in the setup what it leaves is judged, without one a finding says what an ordinary filter would
/// rescue. Trials of the made sessions: 1 rest, 2 to 4 tasks, from 5 on scored.
/// </summary>
public sealed class ScoringTests
{
    private const string HighPass = "\n[scoring]\nhighpass_hz = 20\n";

    [Fact]
    public void MotionIsRejectedAndSaysThatAHighPassWouldRescueTheTrial()
    {
        RecordingResult result = MadeAudit.Of(Moved(60));

        Assert.Equal([6], MadeAudit.RejectedFor(result, "cheek", "low-frequency"));
        Assert.Contains("a high-pass at 20 Hz would leave", Found(result, "cheek", 6, "low-frequency").Text, StringComparison.Ordinal);
        Assert.EndsWith(": this finding would go (highpass_hz = 20.0 under [scoring], if you score so)", Found(result, "cheek", 6, "low-frequency").Text, StringComparison.Ordinal);
        Assert.Null(result.Scoring);
    }

    [Fact]
    public void BehindTheHighPassOfScoringItPassesWithBothValuesSideBySide()
    {
        RecordingResult result = MadeAudit.Of(Moved(60), HighPass);

        Assert.Empty(MadeAudit.FoundFor(result, "cheek", "low-frequency"));
        Assert.Equal("high-pass 20 Hz (order 2)", result.Scoring);
        GradedMeasure raw = Measure(result, "cheek", 6, "lowfreq_rms");
        GradedMeasure left = Measure(result, "cheek", 6, "lowfreq_left");
        Assert.True(raw.Value.Value > 50 && left.Value.Value < 10, FormattableString.Invariant($"{raw.Value.Value} {left.Value.Value}"));

        // What is judged carries grade and limits; what is not carries neither.
        Assert.Equal((Grade.Pass, 10, 50), (left.Grade, left.Questionable, left.Reject));
        Assert.Equal((null, null, null), (raw.Grade, raw.Questionable, raw.Reject));
    }

    [Fact]
    public void MotionThatSurvivesIsStillFoundAndShowsBoth()
    {
        RecordingResult result = MadeAudit.Of(Moved(500), HighPass);

        Finding found = Found(result, "cheek", 6, "low-frequency");
        Assert.Contains(" µV from 2 to 15 Hz raw, ", found.Text, StringComparison.Ordinal);
        Assert.Contains("behind the scoring filter (high-pass 20 Hz (order 2))", found.Text, StringComparison.Ordinal);
        Assert.Equal(["lowfreq_left", "lowfreq_left_ratio"], found.Evidence.Select(one => one.Measure), StringComparer.Ordinal);
        Assert.DoesNotContain("would go", found.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void ClippingIsNotFilteredBack()
    {
        SessionPlan plan = MadeAudit.Session(902);
        SessionPlan clipped = plan with { Faults = [new RailBlocks("cheek", 1.5, 2) { Span = FaultSpan.Of(plan.Trials[5]) }] };

        RecordingResult result = MadeAudit.Of(clipped, "\n[scoring]\nhighpass_hz = 20\nlowpass_hz = 400\nnotch_hz = 50\n");

        Assert.Equal([6], MadeAudit.RejectedFor(result, "cheek", "clipping"));

        // 1.5 % cut from a Gaussian on both sides: SciPy, 0.6182 % of the mean magnitude.
        Assert.Equal(-0.6182, Found(result, "cheek", 6, "clipping").Effect!.Percent!.Value, 0.01);
    }

    /// <summary>With the filter of the setup and with the ordinary one; a trial without pops has nothing added.</summary>
    [Theory]
    [InlineData("")]
    [InlineData("\n[scoring]\nhighpass_hz = 20.0\n")]
    public void PopsAddToTheScoreOfTheirTrialAlone(string scoring)
    {
        RecordingResult result = MadeAudit.Of(Popped(), scoring);

        Finding found = Found(result, "cheek", 6, "pops");
        double added = Measure(result, "cheek", 6, "pops_effect").Value.Value!.Value;
        Assert.InRange(added, 5, 500);
        Assert.Equal(added, found.Effect!.Percent);
        Assert.Equal(0, Measure(result, "cheek", 9, "pops").Value.Value);
        Assert.Equal(0, Measure(result, "cheek", 9, "pops_effect").Value.Value);
    }

    [Fact]
    public void WithoutAHighPassNothingIsSaidOfPops()
    {
        RecordingResult result = MadeAudit.Of(Popped(), "\n[scoring]\nlowpass_hz = 400\n");

        Assert.Equal(
            MeasureValue.None("pops_effect", "[scoring] has no high-pass below half the sampling rate"),
            Measure(result, "cheek", 6, "pops_effect").Value);
    }

    /// <summary>Trials drift alike from the first to the last, but the last ones have little range left, which no filter gives back.</summary>
    [Fact]
    public void ADriftThatAHighPassWouldNotClearSaysWhy()
    {
        SessionPlan plan = MadeAudit.Session(904);
        RecordingResult result = MadeAudit.Of(plan with { Faults = [new Drift("cheek", 1400)] });

        (double Headroom, Finding Finding)[] trials =
        [
            .. MadeAudit.Channel(result, "cheek").Cells
                .Where(cell => cell.Findings.Any(finding => finding.Reason is "drift"))
                .Select(cell => (Measure(result, "cheek", cell.Trial, "headroom").Value.Value!.Value, Found(result, "cheek", cell.Trial, "drift"))),
        ];

        Assert.Equal(plan.Trials.Length, trials.Length);
        Assert.Contains(trials, trial => trial.Headroom < 50);
        Assert.Contains(trials, trial => trial.Headroom > 50);
        Assert.All(trials, trial => Assert.Contains(
            trial.Headroom > 50 ? "; behind a high-pass at 20 Hz this finding would go" : "; a high-pass at 20 Hz would not clear it: only ",
            trial.Finding.Text,
            StringComparison.Ordinal));
        Assert.All(trials.Where(trial => trial.Headroom < 50), trial => Assert.EndsWith(" % of the range left to the rail", trial.Finding.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void DriftGoesBehindTheHighPassButHeadroomStays()
    {
        SessionPlan plan = MadeAudit.Session(903);
        Fault steep = new Drift("cheek", 9000) { Span = new FaultSpan(plan.Trials[5].OnsetS - 1, plan.Trials[5].EndS + 1) };
        SessionPlan drifting = plan with { Faults = [steep] };

        RecordingResult raw = MadeAudit.Of(drifting);
        RecordingResult scored = MadeAudit.Of(drifting, HighPass);
        RecordingResult lowPassed = MadeAudit.Of(drifting, "\n[scoring]\nlowpass_hz = 400\n");
        RecordingResult full = MadeAudit.Of(plan with { Faults = [Offset(plan, "cheek", 13)] }, HighPass);

        Assert.Equal([6], MadeAudit.RejectedFor(raw, "cheek", "drift"));
        Assert.Contains("behind a high-pass at 20 Hz this finding would go", Found(raw, "cheek", 6, "drift").Text, StringComparison.Ordinal);
        Assert.Empty(MadeAudit.FoundFor(scored, "cheek", "drift"));
        Assert.Equal("not judged: scoring takes it away (high-pass 20 Hz (order 2))", Measure(scored, "cheek", 6, "drift_slope").Value.Note);
        Assert.DoesNotContain(MadeAudit.Channel(scored, "cheek").Cells[5].NotAssessed, one => string.Equals(one.Reason, "drift", StringComparison.Ordinal));
        Assert.Equal([6], MadeAudit.RejectedFor(lowPassed, "cheek", "drift"));
        Assert.Equal(Enumerable.Range(1, plan.Trials.Length), MadeAudit.RejectedFor(full, "cheek", "drift"));
    }

    /// <summary>Below 2 Hz what is left of a drift would be judged by nothing; a first-order high-pass makes a constant of a ramp.</summary>
    [Theory]
    [InlineData("highpass_hz = 0.5", true)]
    [InlineData("highpass_hz = 20\norder = 1", true)]
    [InlineData("highpass_hz = 2", false)]
    public void DriftIsJudgedWhereTheHighPassDoesNotTakeItAll(string filter, bool isJudged)
    {
        SessionPlan plan = MadeAudit.Session(903);
        Fault steep = new Drift("cheek", 9000) { Span = new FaultSpan(plan.Trials[5].OnsetS - 1, plan.Trials[5].EndS + 1) };

        RecordingResult result = MadeAudit.Of(plan with { Faults = [steep] }, "\n[scoring]\n" + filter + "\n");

        Assert.Equal(isJudged ? [6] : [], MadeAudit.RejectedFor(result, "cheek", "drift"));
        Assert.Equal(isJudged, Measure(result, "cheek", 6, "drift_slope").Reject is not null);
        if (isJudged)
        {
            Assert.Equal(new ScoreEffect(null, null, null, "no high-pass of order 2 or more at 2 Hz or more under [scoring]"), Found(result, "cheek", 6, "drift").Effect);
        }
    }

    /// <summary>42000 samples at the rail: 42000 times 100/42000 is more than 100 by a bit.</summary>
    [Fact]
    public void ATrialThatIsClippedThroughoutLosesAll()
    {
        SessionPlan plan = MadeAudit.Session(912, new Rational(2000, 1), 1, 21);

        RecordingResult result = MadeAudit.Of(plan with { Faults = [new LeadOff("cheek") { AtRail = true }] });

        Assert.Equal(100, Measure(result, "cheek", 1, "clipped").Value.Value);
        Assert.Equal(-100, Measure(result, "cheek", 1, "clipped_effect").Value.Value!.Value, 1e-6);
    }

    /// <summary>No high-pass of 400 Hz exists at 500 Hz, and one low-pass at 1 Hz leaves no muscle.</summary>
    [Theory]
    [InlineData("highpass_hz = 400")]
    [InlineData("lowpass_hz = 1\norder = 8")]
    public void WhereTheFilterLeavesNothingOfTheBandNothingIsCalledGood(string filter)
    {
        RecordingResult result = MadeAudit.Of(MadeAudit.Session(913, new Rational(500, 1), 2), "\n[scoring]\n" + filter + "\n");

        string[] reasons = ["line-noise", "narrow-band", "low-frequency"];
        Assert.All(result.Channels.Select(channel => channel.NotAssessed).Concat(result.Channels.SelectMany(channel => channel.Cells).Select(cell => cell.NotAssessed)), open =>
            Assert.All(reasons, reason => Assert.Contains(new NotAssessed(reason, "the scoring filter leaves nothing of the band"), open)));
        Assert.Equal("the scoring filter leaves nothing of the band", Measure(result, "cheek", 1, "line_left").Value.Note);
    }

    [Fact]
    public void NoiseThatQuietStretchesShowHasTheEffectOfItsPowerThere()
    {
        SessionPlan plan = MadeAudit.Session(914, new Rational(1000, 1)) with { Faults = [new BroadbandNoise(["cheek"], 8)] };

        RecordingResult result = MadeAudit.Of(plan);

        Finding found = MadeAudit.Channel(result, "cheek").Cells.SelectMany(cell => cell.Findings)
            .First(one => one.FromQuietStretches && string.Equals(one.Reason, "noise-floor", StringComparison.Ordinal));

        // White from 20 to 450 Hz: what passes at 20 Hz and what lies below and above add a tenth; of the power of a Gaussian 2/π is the mean magnitude's square.
        double rectified = Measure(result, "cheek", found.Trial!.Value, "rectified").Value.Value!.Value;
        double share = 1.1 * found.Evidence[0].Value * found.Evidence[0].Value / (Math.PI / 2 * rectified * rectified);
        double expected = 100 * ((1 / Math.Sqrt(1 - share)) - 1);
        Assert.Equal(expected, found.Effect!.Percent!.Value, 0.25 * expected);
    }

    [Fact]
    public void ANotchTakesTheMainsAndLeavesTheHarmonicsThatItDoesNotName()
    {
        SessionPlan plan = MadeAudit.Session(904);
        SessionPlan pure = plan with { Faults = [new MainsPickup(["cheek"], 10) { Harmonics = [1] }] };
        SessionPlan rich = plan with { Faults = [new MainsPickup(["cheek"], 10) { Harmonics = [1, 0, 1] }] };
        const string Notch = "\n[scoring]\nhighpass_hz = 20\nnotch_hz = ";

        int[] all = [.. Enumerable.Range(1, plan.Trials.Length)];
        RecordingResult raw = MadeAudit.Of(pure);
        Assert.Equal(all, MadeAudit.RejectedFor(raw, "cheek", "line-noise"));
        Assert.Contains("; a notch at 50 Hz would leave ", Found(raw, "cheek", 1, "line-noise").Text, StringComparison.Ordinal);
        Assert.Contains("but it takes muscle away too", Found(raw, "cheek", 1, "line-noise").Text, StringComparison.Ordinal);
        Assert.Equal(all, MadeAudit.RejectedFor(MadeAudit.Of(pure, HighPass), "cheek", "line-noise"));
        Assert.Empty(MadeAudit.FoundFor(MadeAudit.Of(pure, Notch + "50\n"), "cheek", "line-noise"));
        Assert.Equal(all, MadeAudit.RejectedFor(MadeAudit.Of(rich, Notch + "[50]\n"), "cheek", "line-noise"));
        Assert.Empty(MadeAudit.FoundFor(MadeAudit.Of(rich, Notch + "[50, 150]\n"), "cheek", "line-noise"));
    }

    /// <summary>What holds for the mean of a recording is false of single trials.</summary>
    [Fact]
    public void AFindingOfTheWholeChannelSaysWhatWouldBeLeftAndPromisesNothing()
    {
        SessionPlan plan = MadeAudit.Session(916) with { Faults = [new MainsPickup(["cheek"], 14) { Harmonics = [1] }, new NarrowPeak(["eye"], 12, 24)] };

        // Order 2 at 20 Hz passes 0.82 of 24 Hz: 9.9 µV.
        RecordingResult result = MadeAudit.Of(plan, string.Empty, "[narrow-band]\nchannel_reject = [{ narrow_rms = 11.0 }]\n");

        Finding[] channels = [.. result.Channels.SelectMany(channel => channel.Findings)];
        Assert.Contains(channels, one => one.Text.Contains("a notch at 50 Hz would leave", StringComparison.Ordinal));
        Assert.Contains(channels, one => one.Text.Contains("a high-pass at 20 Hz would leave", StringComparison.Ordinal));
        Assert.All(channels, one => Assert.DoesNotMatch("this finding would go|this would only be questionable", one.Text));
        Assert.Contains(result.Channels.SelectMany(channel => channel.Cells).SelectMany(cell => cell.Findings), one =>
            one.Text.Contains("this finding would go", StringComparison.Ordinal));
    }

    /// <summary>A notch does not help where the lab's limit is a share of the score that the harmonics alone exceed.</summary>
    [Fact]
    public void ANotchPromisesNothingAgainstALimitOfTheScoreThatTheHarmonicsExceed()
    {
        SessionPlan plan = MadeAudit.Session(917);
        const string Lab = "[line-noise]\nquestionable = [{ line_effect = 10.0 }]\nreject = [{ line_effect = 60.0 }]\n";

        RecordingResult rich = MadeAudit.Of(plan with { Faults = [new MainsPickup(["cheek"], 14) { Harmonics = [1, 0, 1] }] }, string.Empty, Lab);
        RecordingResult pure = MadeAudit.Of(plan with { Faults = [new MainsPickup(["cheek"], 14) { Harmonics = [1] }] }, string.Empty, Lab);

        Assert.DoesNotContain("notch", Found(rich, "cheek", 1, "line-noise").Text, StringComparison.Ordinal);
        Assert.Contains("a notch at 50 Hz would leave", Found(pure, "cheek", 1, "line-noise").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void ANotchTakesATone()
    {
        SessionPlan plan = MadeAudit.Session(905) with { Faults = [new NarrowPeak(["eye"], 12, 87), new NarrowPeak(["eye"], 4, 211)] };

        RecordingResult result = MadeAudit.Of(plan, "\n[scoring]\nhighpass_hz = 20\nnotch_hz = 87\n");

        // The weaker of the two is now the strongest that is left.
        Assert.Equal(87, Measure(result, "eye", 1, "narrow_hz").Value.Value!.Value, 0.1);
        Assert.Equal(4, Measure(result, "eye", 1, "narrow_left").Value.Value!.Value, 0.2);
        Assert.StartsWith("steady 211 Hz tone 4.0 µV raw, 4.0 µV behind the scoring filter", Found(result, "eye", 1, "narrow-band").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void TheBaselineIsJudgedBehindTheFilterToo()
    {
        SessionPlan plan = MadeAudit.Session(906);
        decimal onset = plan.Trials[5].OnsetS;
        SessionPlan moved = plan with { Faults = [Sway(80) with { Span = new FaultSpan(onset - 2, onset) }] };

        // The setup of a plan ends with its table of trials.
        RecordingResult raw = MadeAudit.Of(moved, "baseline_s = 2.0\n");
        RecordingResult scored = MadeAudit.Of(moved, "baseline_s = 2.0\n" + HighPass);

        Finding found = Found(raw, "cheek", 6, "low-frequency");
        Assert.True(found.InBaseline);
        Assert.Contains("this finding would go", found.Text, StringComparison.Ordinal);
        Assert.NotNull(found.Effect!.WithoutUv);
        Assert.Empty(MadeAudit.FoundFor(scored, "cheek", "low-frequency"));
        Assert.Equal(
            Grade.Pass,
            MadeAudit.Channel(scored, "cheek").Cells[5].BaselineMeasures.Single(one => string.Equals(one.Value.Measure, "lowfreq_left", StringComparison.Ordinal)).Grade);
    }

    [Fact]
    public void WhatQuietStretchesSayIsWhatTheFilterLeavesThere()
    {
        SessionPlan plan = MadeAudit.Session(907) with { Faults = [new MainsPickup(["cheek"], 7) { Harmonics = [1] }] };

        RecordingResult raw = MadeAudit.Of(plan);
        RecordingResult scored = MadeAudit.Of(plan, "\n[scoring]\nhighpass_hz = 100\n");
        RecordingResult notched = MadeAudit.Of(plan, "\n[scoring]\nhighpass_hz = 20\nnotch_hz = 50\n");

        Finding inherited = raw.Channels[0].Cells.SelectMany(cell => cell.Findings).First(finding => finding.FromQuietStretches);
        Assert.Equal("line_rms", inherited.Evidence[0].Measure);
        Assert.True(inherited.Effect!.Percent is > 0 and < 30, FormattableString.Invariant($"{inherited.Effect}"));

        // |H|² of order 2 at half the corner is 1/17: 1.7 of 7 µV are left, questionable.
        Finding weaker = scored.Channels[0].Cells.SelectMany(cell => cell.Findings).First(finding => finding.FromQuietStretches);
        Assert.Equal(("line_left", Grade.Questionable), (weaker.Evidence[0].Measure, weaker.Grade));
        Assert.Equal(7 / Math.Sqrt(17), weaker.Evidence[0].Value, 0.1);
        Assert.Contains(" µV raw, 1.7 µV behind the scoring filter (high-pass 100 Hz (order 2)) in the quiet", weaker.Text, StringComparison.Ordinal);
        Assert.Empty(MadeAudit.FoundFor(notched, "cheek", "line-noise"));
    }

    [Fact]
    public void AnEffectIsTheAmplitudeWithAndWithoutTheFault()
    {
        SessionPlan clean = MadeAudit.Session(909);
        SessionPlan noisy = clean with { Faults = [new MainsPickup(["cheek"], 6) { Harmonics = [1] }] };

        RecordingResult without = MadeAudit.Of(clean);
        RecordingResult with = MadeAudit.Of(noisy);

        // The same muscle with and without 6 µV of mains: what the finding says was there must be there. A sine is less peaked than muscle, hence the tenth.
        foreach (Finding found in MadeAudit.Channel(with, "cheek").Cells.SelectMany(cell => cell.Findings).Where(one => one.Effect is not null && !one.FromQuietStretches))
        {
            double truth = Measure(without, "cheek", found.Trial!.Value, "rectified").Value.Value!.Value;
            double measured = Measure(with, "cheek", found.Trial!.Value, "rectified").Value.Value!.Value;
            Assert.Equal(measured, found.Effect!.WithoutUv!.Value + found.Effect.Microvolts!.Value, 1e-9);
            Assert.Equal(truth, found.Effect.WithoutUv.Value, 0.12 * measured);
        }
    }

    [Fact]
    public void AWindowUnderScoringIsTheWindowOfTheTrials()
    {
        StudySetup setup = SetupFile.Parse("[scoring]\nwindow = [0.5, 2.5]\n", "setup.toml");

        Assert.Equal((0.5M, 2.5M), (setup.Trials.WindowFromS, setup.Trials.WindowToS));
        Assert.False(setup.Scoring.HasFilter);
    }

    [Fact]
    public void WithoutAFilterNothingOfTheOldMeasuresAndVerdictsChanges()
    {
        SessionPlan plan = MadeAudit.WithConfusersAndMotion(MadeAudit.Session(910));

        RecordingResult plain = MadeAudit.Of(plan);
        RecordingResult order = MadeAudit.Of(plan, "\n[scoring]\norder = 4\n");

        Assert.Equal(MadeAudit.Everything(plain), MadeAudit.Everything(order));
        Assert.All(plain.Channels, channel => Assert.All(channel.Measures, measure =>
            Assert.True(measure.Grade is null || !measure.Value.Measure.Contains("_left", StringComparison.Ordinal))));
    }

    private static SessionPlan Moved(double lowUv)
    {
        SessionPlan plan = MadeAudit.Session(901);
        return plan with { Faults = [Sway(lowUv) with { Span = new FaultSpan(plan.Trials[5].OnsetS - 1, plan.Trials[5].EndS + 1) }] };
    }

    private static SessionPlan Popped()
    {
        SessionPlan plan = MadeAudit.Session(915);
        return plan with { Faults = [new ElectrodePops("cheek", 400, 4) { Span = FaultSpan.Of(plan.Trials[5]) }] };
    }

    private static Motion Sway(double lowUv) => new(["cheek"], lowUv / Math.Sqrt(NoiseBand.Motion.ShareBetween(2, 15)));

    /// <summary>An offset throughout that leaves some room to the rail, in %.</summary>
    private static Drift Offset(SessionPlan plan, string site, double roomPercent)
    {
        Channel channel = MadeRecording.Make(plan).ChannelOf(site);
        return new Drift(site, 0, channel.UpperRail!.Value * (1 - (roomPercent / 100)));
    }
}
