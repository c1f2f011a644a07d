using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Detectability;
using ChannelAudit.Events;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using Xunit;

namespace ChannelAudit.Core.Tests.Acceptance;

/// <summary>Faults planted in a recording: huge ones are found, none is found where nothing is planted, and what cannot be shown says so.</summary>
public sealed class DetectabilityTests
{
    [Fact]
    public void HugeFaultsAreFoundAndTinyOnesAreNot()
    {
        DetectabilityResult result = Study(Plan(), "line-noise,narrow-band,noise-floor,flatline,dropout,drift,low-frequency,pops", repeats: 1);

        Assert.All(result.Faults, fault =>
        {
            Assert.Null(fault.NotAssessed);
            Assert.True(fault.Points[^1].Places >= 3, fault.Name);
            Assert.Equal(fault.Points[^1].Places, fault.Points[^1].Found);
        });
        Assert.All(result.Faults.Where(fault => fault.Name is "line-noise" or "drift" or "low-frequency"), fault => Assert.Equal(0, fault.Points[0].Found));
    }

    [Fact]
    public void JointsAndClippingAreFound()
    {
        DetectabilityResult result = Study(Plan(), "bridge-two,clipping", repeats: 1);

        Assert.All(result.Faults, fault => Assert.Equal((true, fault.Points[^1].Places), (fault.Points[^1].Places > 0, fault.Points[^1].Found)));
    }

    [Theory]
    [InlineData("line-noise")]
    [InlineData("low-frequency")]
    [InlineData("drift")]
    [InlineData("pops")]
    [InlineData("noise-floor")]
    public void OfSizeZeroNothingIsFound(string name)
    {
        using Recording recording = MadeRecording.Make(Plan()).Open();
        PlantHost host = new(recording, Input(recording, Plan()), CancellationToken.None);
        PlantKind kind = PlantKinds.All.First(one => string.Equals(one.Name, name, StringComparison.Ordinal));
        PlantPlace place = kind.Places(host).First();
        double[] before = new double[1000];
        double[] after = new double[1000];
        using Recording planted = PlantedSamples.In(recording, [.. kind.Edits(host, place, 0, 7)]);
        long start = Math.Max(0, (long)(place.FromS * 2000) + 500);

        recording.Samples.Read(host.Audited[place.Channel].Index, start, before);
        planted.Samples.Read(host.Audited[place.Channel].Index, start, after);

        Assert.Equal(before, after);
    }

    [Fact]
    public void TheSameStudyGivesTheSameNumbersOnAnyNumberOfThreads() =>
        Assert.Equal(Numbers(Study(Plan(), "pops", repeats: 2, jobs: 1)), Numbers(Study(Plan(), "pops", repeats: 2, jobs: 3)));

    [Fact]
    public void WhatIsFoundEverywhereAsRecordedIsNotAssessed()
    {
        DetectedFault fault = Study(Plan(new MainsPickup(["cheek", "brow", "eye"], 40)), "line-noise", repeats: 1).Faults[0];

        Assert.Equal("found already in every trial of every channel as recorded", fault.NotAssessed);
        Assert.Empty(fault.Points);
    }

    [Fact]
    public void AChannelThatIsFaultyAsRecordedGetsNothingPlanted()
    {
        using Recording recording = MadeRecording.Make(Plan(new MainsPickup(["cheek"], 40))).Open();
        PlantHost host = new(recording, Input(recording, Plan()), CancellationToken.None);

        PlantPlace[] places = [.. PlantKinds.All[0].Places(host)];

        Assert.NotEmpty(places);
        Assert.DoesNotContain(places, place => place.Channel == 0);
    }

    [Fact]
    public void BehindAHighPassDriftIsNotAssessed()
    {
        DetectedFault fault = Study(Plan() with { Amplifier = new AmplifierPlan { HighpassHz = 10 } }, "drift", repeats: 1).Faults[0];

        Assert.Contains("high-pass", fault.NotAssessed, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutATaskNoWeakAnswerCanBePlanted()
    {
        SessionPlan plan = Plan();
        SessionPlan scored = plan with { Trials = [.. plan.Trials.Where(trial => trial.Role != TrialRole.Task)] };

        Assert.Equal("no task was asked of any site", Study(scored, "weak-response", repeats: 1).Faults[0].NotAssessed);
    }

    [Fact]
    public void OnlyTheFirstMinutesAreUsed() => Assert.Equal(60, Study(Plan(), "pops", repeats: 1, minutes: 1).UsedS);

    [Fact]
    public void TwoJointsMixAsTheNodeEquationsSay()
    {
        using Recording recording = MadeRecording.Make(Plan()).Open();
        PlantHost host = new(recording, Input(recording, Plan()), CancellationToken.None);
        PlantPlace place = new(0, 2, 10, 20, [0]);
        using Recording planted = PlantedSamples.In(recording, [.. PlantEdits.Joined(host, place, 0, 2)]);
        double[] cheek = new double[2000];
        double[] eye = new double[2000];

        planted.Samples.Read(0, 30000, cheek);
        planted.Samples.Read(2, 30000, eye);

        // Gel without resistance at both joints: both sites show the same, but for their levels and half a step of the converter each.
        double level = host.Of(0).Median - host.Of(2).Median;
        Assert.All(cheek.Zip(eye), pair => Assert.InRange(Math.Abs(pair.First - pair.Second - level), 0, 2.1 * recording.Channels[0].Step));
    }

    private static IEnumerable<(string, double, int, int, int)> Numbers(DetectabilityResult result) =>
        result.Faults.SelectMany(fault => fault.Points.Select(point => (fault.Name, point.Size, point.Places, point.Found, point.Rejected)));

    private static SessionPlan Plan(params ImmutableArray<Fault> faults) =>
        new Protocol { ScoredTrials = 12, RestS = 12, TaskS = 4, PauseS = 3, Answers = [[new SiteActivity("brow", 5)]] }.Plan(77, SitePlan.Face) with
        {
            Amplifier = new AmplifierPlan { HighpassHz = 0, Bits = 24, SettlingUvPerMin = 0 },
            Faults = faults,
        };

    private static DetectabilityResult Study(SessionPlan plan, string faults, int repeats, int jobs = 2, int minutes = 15)
    {
        using Recording recording = MadeRecording.Make(plan).Open();
        DetectabilityOptions options = new() { Faults = [.. faults.Split(',')], Repeats = repeats, Jobs = jobs, Minutes = minutes };
        return DetectabilityStudy.Of(recording, Input(recording, plan), options, new Silent(), CancellationToken.None);
    }

    private static AuditInput Input(Recording recording, SessionPlan plan)
    {
        StudySetup setup = SetupFile.Parse(SetupText.Of(plan), "setup.toml");
        return new AuditInput
        {
            Id = "made",
            Path = "made",
            Sha256 = string.Empty,
            Criteria = DefaultCriteria.All,
            Setup = setup,
            Trials = TrialPlan.Of(recording, TrialSources.Choose(recording, setup, null, RecordingCompanions.None), setup).Trials,
            TrialsFrom = "annotations",
        };
    }

    private sealed class Silent : IProgress<(int Done, int All)>
    {
        public void Report((int Done, int All) value)
        {
            // Nobody looks.
        }
    }
}
