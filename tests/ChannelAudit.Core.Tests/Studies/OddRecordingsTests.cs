using System.Collections.Immutable;
using ChannelAudit.Core.Tests.Acceptance;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Studies;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Studies;

public sealed class OddRecordingsTests
{
    [Fact]
    public void AStudyOfFacesThatDifferSaysNothing() => Assert.Empty(MadeStudy.Found(MadeStudy.Clean));

    [Fact]
    public void TrialsOfAnotherRecordingAreNamedWhereOthersHaveTimesOfTheirOwn()
    {
        RecordingResult[] own = [.. MadeStudy.Clean.Select((result, i) => Shifted(result, i * 0.4m))];
        RecordingResult other = own[0] with { Id = "q", Sha256 = "of q", Channels = MadeStudy.Audited("q", MadeStudy.Plan(231, 1)).Channels };
        RecordingResult copy = own[0] with { Id = "r", Sha256 = "of r" };

        Assert.Empty(MadeStudy.Found(own));
        Assert.Equal(
            [$"same-events p1+q -: {own[0].Trials.Length} trials with the same onsets, to the millisecond, and the same labels, where most recordings have times of their own"],
            MadeStudy.Found([.. own, other]));
        Assert.DoesNotContain(MadeStudy.Found([.. own, copy]), line => line.StartsWith("same-events", StringComparison.Ordinal));
        Assert.DoesNotContain(MadeStudy.Found([.. own.Take(2), other]), line => line.StartsWith("same-events", StringComparison.Ordinal));
        Assert.Empty(MadeStudy.Found([.. own.Select(result => result with { Trials = own[0].Trials })]));
    }

    [Theory]
    [InlineData(0.69, "69 %")]
    [InlineData(0.71, null)]
    [InlineData(1.49, null)]
    [InlineData(1.52, "152 %")]
    public void ARecordingMuchShorterOrLongerThanMostIsNamed(double length, string? share)
    {
        RecordingResult odd = MadeStudy.Clean[1] with { DurationS = MadeStudy.Clean[1].DurationS * length };
        string[] lines = [.. MadeStudy.Found([.. MadeStudy.Clean.Where((_, i) => i != 1), odd]).Where(line => line.StartsWith("length", StringComparison.Ordinal))];

        Assert.Equal(share is null ? 0 : 1, lines.Length);
        Assert.All(lines, line => Assert.Contains($" s long, {share} of the usual", line, StringComparison.Ordinal));
    }

    [Fact]
    public void AStudyWithoutAUsualLengthHasNoOddOne() => Assert.Empty(
        MadeStudy.Found([.. MadeStudy.Clean.Select((result, i) => result with { DurationS = 100 * (i + 1) })]));

    private static RecordingResult Shifted(RecordingResult result, decimal byS) =>
        result with { Trials = [.. result.Trials.Select(trial => trial with { OnsetS = trial.OnsetS + (byS * trial.Number) })] };

    [Theory]
    [InlineData(201, 4.0, 1.0)]
    [InlineData(202, 0.25, 1.0)]
    [InlineData(203, 1.0, 4.0)]
    public void AFaceFourTimesStrongerOrWeakerIsNoGain(ulong seed, double strength, double rest) => Assert.Empty(MadeStudy.Found(
        [.. MadeStudy.Clean, MadeStudy.Audited("q", MadeStudy.Plan(seed, strength) is var plan ? plan with { Sites = [.. plan.Sites.Select(site => site with { RestUv = site.RestUv * rest })] } : plan)]));

    [Fact]
    public void NoiseIsNoGain() => Assert.DoesNotContain(
        MadeStudy.Of([.. MadeStudy.Clean, MadeStudy.Audited("q", MadeAudit.WithConfusers(MadeStudy.Plan(204, 1), new BroadbandNoise(["cheek"], 20)))]),
        one => string.Equals(one.Kind, OddKind.Gain, StringComparison.Ordinal));

    [Fact]
    public void AnotherRateIsNamed() => Assert.Equal(
        ["rate q -: 2000 Hz, where 5 of 6 recordings have 1000 Hz"],
        MadeStudy.Found([.. MadeStudy.Clean, MadeStudy.Audited("q", MadeStudy.Plan(205, 1) with { Rate = new Rational(2000, 1) })]));

    [Fact]
    public void AStudyAtTwoRatesHasGroupsAndNobodyIsOdd()
    {
        RecordingResult[] study = [.. MadeStudy.Clean.Take(4).Select((result, i) => i < 2 ? result : result with { Channels = [.. result.Channels.Select(channel => channel with { RateHz = 2000 })] })];
        StudyFinding found = Assert.Single(MadeStudy.Of(study));

        Assert.Equal("two groups, 1000 Hz (2 of 4); 2000 Hz (2 of 4); named are those outside the first", found.Text);
        Assert.Contains("groups", found.ToDo, StringComparison.Ordinal);
        Assert.Equal(["p3", "p4"], found.Recordings.ToArray());
    }

    [Theory]
    [InlineData(10, "about 10 times")]
    [InlineData(1000, "about 1000 times")]
    [InlineData(0.1, "about 1/10 of")]
    public void AGainIsNamed(double gain, string factor)
    {
        StudyFinding found = Assert.Single(MadeStudy.Of([.. MadeStudy.Clean, MadeStudy.Audited("q", MadeStudy.Plan(206, 1), recording => Altered.Scaled(recording, gain, 0))]));

        Assert.Equal(("gain", "q", null), (found.Kind, Assert.Single(found.Recordings), found.Channel));
        Assert.StartsWith($"all channels {factor} the others': brow ", found.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void AGainOfOneChannelIsItsOwn()
    {
        StudyFinding found = Assert.Single(MadeStudy.Of([.. MadeStudy.Clean, MadeStudy.Changed("q", 207, "brow", value => value * 100)]));

        Assert.Equal(("gain", "brow"), (found.Kind, found.Channel));
    }

    [Fact]
    public void HalfAStudyWithAnotherGainIsTwoGroups()
    {
        RecordingResult[] study = [.. MadeStudy.Clean.Take(4).Select((result, i) => i < 2 ? result : MadeStudy.With(
            result, result.Id, signal => signal with { LevelLow = signal.LevelLow * 1000, LevelMiddle = signal.LevelMiddle * 1000, LevelHigh = signal.LevelHigh * 1000 }))];

        Assert.Equal(
            ["brow", "cheek", "eye"],
            MadeStudy.Of(study).Where(one => string.Equals(one.Kind, OddKind.Gain, StringComparison.Ordinal) && one.Text.Contains("two groups, 2 of 4 recordings about 1000 times the other 2", StringComparison.Ordinal)).Select(one => one.Channel!),
            StringComparer.Ordinal);
    }

    [Fact]
    public void AnotherFilterIsNamedByHeaderAndBySpectrum()
    {
        RecordingResult filtered = MadeStudy.Audited("q", MadeStudy.Plan(208, 1) with { Amplifier = new AmplifierPlan { HighpassHz = 20 } });
        StudyFinding[] found = [.. MadeStudy.Of([.. MadeStudy.Clean, filtered])];

        Assert.Equal(["filter-stated", "filter-measured"], found.Select(one => one.Kind), StringComparer.Ordinal);
        Assert.Equal("high-pass 20 Hz, where 5 of 6 recordings have DC", found[0].Text);
        Assert.EndsWith("a higher high-pass than the others", found[1].Text, StringComparison.Ordinal);

        // The spectrum alone, where the header says what all others say.
        Assert.Equal("filter-measured", Assert.Single(MadeStudy.Of([.. MadeStudy.Clean, MadeStudy.With(filtered, "q", signal => signal with { HighpassHz = 0 })])).Kind);
    }

    [Fact]
    public void ALowerLowPassIsNamedBySpectrum()
    {
        RecordingResult filtered = MadeStudy.Audited("q", MadeStudy.Plan(209, 1) with { Amplifier = new AmplifierPlan { LowpassHz = 100 } });

        Assert.EndsWith("a lower low-pass than the others", Assert.Single(MadeStudy.Of([.. MadeStudy.Clean, MadeStudy.With(filtered, "q", signal => signal with { LowpassHz = null })])).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void AnotherOrderAndOtherChannelsAreNamed()
    {
        RecordingResult first = MadeStudy.Clean[0];
        RecordingResult turned = first with { Channels = [.. first.Channels.Reverse()] };
        RecordingResult fewer = first with { Channels = first.Channels[..2] };
        RecordingResult more = first with { Channels = [.. first.Channels, first.Channels[0] with { Name = "chin" }] };

        Assert.Equal(["channel-order p1 -: eye, brow, cheek, where 4 of 5 recordings have cheek, brow, eye"], MadeStudy.Found([turned, .. MadeStudy.Clean[1..]]));
        Assert.Equal(["channels p1 -: without eye, where 4 of 5 recordings have the usual ones"], MadeStudy.Found([fewer, .. MadeStudy.Clean[1..]]));
        Assert.Equal(["channels p1 -: also chin, where 4 of 5 recordings have the usual ones"], MadeStudy.Found([more, .. MadeStudy.Clean[1..]]));
    }

    [Fact]
    public void NamesWithNothingInCommonAreSaidOnce()
    {
        RecordingResult[] study = [.. MadeStudy.Clean.Select(result => result with { Channels = [.. result.Channels.Select(channel => channel with { Name = result.Id + channel.Name })] })];

        Assert.StartsWith("the recordings have no channel name in common", Assert.Single(MadeStudy.Of(study)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void AnEyeUpsideDownIsNamedByItsBlinks()
    {
        StudyFinding found = Assert.Single(MadeStudy.Of([.. MadeStudy.Clean, MadeStudy.Changed("q", 210, "eye", value => -value)]));

        Assert.Equal(("polarity", "eye"), (found.Kind, found.Channel));
        Assert.StartsWith("slow deflections go down, in 5 of 6 recordings to the other side", found.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutBlinksOnlyThePairIsKnown()
    {
        // The cheek has none; what it shares with the eye has turned its sign.
        StudyFinding found = Assert.Single(MadeStudy.Of([.. MadeStudy.Clean, MadeStudy.Changed("q", 211, "cheek", value => -value)]));

        Assert.Equal(("polarity", null), (found.Kind, found.Channel));
        Assert.Contains("cheek and eye share with opposite sign", found.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1000, 0)]
    [InlineData(-1, 0)]
    [InlineData(0.37, 12)]
    public void OneSignalUnderTwoIdsIsRecognisedWhateverItsHeader(double gain, double offset)
    {
        SessionPlan plan = MadeStudy.Plan(212, 1);
        RecordingResult[] two = [MadeStudy.Audited("a", plan), MadeStudy.Audited("b", plan, recording => Altered.Scaled(recording, gain, offset))];
        StudyFinding found = Assert.Single(MadeStudy.Of(two));

        Assert.Equal(("same-signal", null), (found.Kind, found.Channel));
        Assert.Equal(["a", "b"], found.Recordings.ToArray());
        Assert.StartsWith("both hold the same signal: ", found.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void RoundingHidesNoSignal()
    {
        SessionPlan plan = MadeStudy.Plan(213, 1);

        Assert.Equal("same-signal", Assert.Single(MadeStudy.Of([MadeStudy.Audited("a", plan), MadeStudy.Audited("b", plan, recording => Altered.Changed(recording, string.Empty, all => Array.ConvertAll(all, value => Math.Round(value)), 1))])).Kind);
    }

    [Fact]
    public void OneChannelOfAnotherRecordingIsNamed()
    {
        using Recording other = MadeRecording.Make(MadeStudy.Plan(100, 1)).Open();
        StudyFinding found = Assert.Single(MadeStudy.Of([MadeStudy.Clean[0], MadeStudy.Audited("q", MadeStudy.Plan(214, 1), recording => Altered.Mixed(recording, other, 1))]));

        Assert.Equal(("same-signal", "brow"), (found.Kind, found.Channel));
        Assert.Equal(["p1", "q"], found.Recordings.ToArray());
    }

    [Fact]
    public void OneFileUnderTwoIdsIsNamedOnce() => Assert.Equal(
        ["same-file p1+q -: the two files are the same, byte by byte"], MadeStudy.Found([.. MadeStudy.Clean, MadeStudy.Clean[0] with { Id = "q" }]));

    [Fact]
    public void TheOrderInWhichResultsComeChangesNothing()
    {
        RecordingResult[] study = [.. MadeStudy.Clean, MadeStudy.With(MadeStudy.Clean[1], "q", signal => signal with { HighpassHz = 10 }), MadeStudy.Clean[2] with { Id = "r" }];

        Assert.Equal(MadeStudy.Found(study), MadeStudy.Found(study.Reverse()));
        Assert.NotEmpty(MadeStudy.Found(study));
    }

    [Fact]
    public void TwoRecordingsHaveNoRest() => Assert.Empty(MadeStudy.Found(MadeStudy.Clean[0], MadeStudy.With(MadeStudy.Clean[1], "q", signal => signal with { HighpassHz = 10 })));

    [Fact]
    public void ResultsOfOlderVersionsAreComparedByTheirHeaders()
    {
        RecordingResult[] study = [.. MadeStudy.Clean.Select(result => result with { Channels = [.. result.Channels.Select(channel => channel with { Signal = null })] })];

        Assert.Empty(MadeStudy.Found(study));
    }
}
