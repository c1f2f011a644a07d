using ChannelAudit.Criteria;
using ChannelAudit.Pilot;
using ChannelAudit.Runs;
using ChannelAudit.Setup;
using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.TestKit;
using ChannelAudit.Verdicts;
using Xunit;

namespace ChannelAudit.Core.Tests.Pilot;

/// <summary>What a pilot says beside its first action.</summary>
public sealed class PilotAuditTests
{
    [Fact]
    public void WithoutASetupItSaysWhatItCouldNotCheck()
    {
        PilotReport report = Without("");

        Assert.Equal(PilotAnswer.Start, report.Answer);
        Assert.Contains(report.NotChecked, line => line.StartsWith("without a setup:", StringComparison.Ordinal));
        Assert.All(report.Sites, site => Assert.Null(site.Task));
    }

    [Fact]
    public void ATaskThatNeverOccursIsNamedWithTheLabelsThatDo()
    {
        PilotReport report = Without(SetupText.Of(PilotCase.Recorded(1)).Replace("draw brows together", "lower brows", StringComparison.Ordinal));

        Assert.Equal(0, report.Sites[1].Task!.Times);
        string line = Assert.Single(report.NotChecked, line => line.Contains("'lower brows' (brow)", StringComparison.Ordinal));
        Assert.Contains("'draw brows together'", line, StringComparison.Ordinal);
    }

    [Fact]
    public void ThreeSecondsAreNoPilot()
    {
        SessionPlan plan = PilotCase.Recorded(1) with { DurationS = 3, Trials = [] };
        PilotReport report = new PilotCase { Plan = plan, AsWrittenDown = PilotCase.Recorded(1) }.Run();

        Assert.NotEmpty(report.NotChecked);
        Assert.Contains(report.NotChecked, line => line.Contains("tasks that the recording does not have", StringComparison.Ordinal));
        Assert.Contains(report.NotChecked, line => line.StartsWith("bridge", StringComparison.Ordinal));
    }

    [Fact]
    public void EachMuscleAnswersItsOwnTaskMost()
    {
        PilotReport report = new PilotCase { Plan = PilotCase.Recorded(3) with { Faults = [new Crosstalk("cheek", "eye", 0.2)] } }.Run();

        Assert.All(report.Sites, site => Assert.True(site.Task!.AnswersMost));

        // 25 µV over 1.5 µV of muscle and the noise beside it: 20 log10(25/1.7) is 23 dB.
        Assert.All(report.Sites, site => Assert.InRange(site.Task!.Decibels!.Value, 21, 25));
        Assert.All(report.Sites, site => Assert.InRange(site.Task!.ContractionUv!.Value, 22, 28));
        Assert.All(report.Sites, site => Assert.NotNull(site.Trace));
    }

    [Fact]
    public void ARejectedTrialMakesASiteDoubtfulAndNoWorse()
    {
        SessionPlan plan = PilotCase.Recorded(4);
        PilotReport report = new PilotCase { Plan = plan with { Faults = [new Motion(["cheek"], 400) { Span = FaultSpan.Of(plan.Trials[1]) }] } }.Run();

        Assert.Equal(Grade.Questionable, report.Sites[0].Verdict);
        Assert.Equal(PilotAnswer.Doubtful, report.Answer);
    }

    [Fact]
    public void TheRoomIsHowMuchLargerAContractionMayBecome()
    {
        PilotReport report = new PilotCase { Plan = PilotCase.Recorded(5) with { Faults = [new HeaderRail("cheek", 400)] } }.Run();

        // 99.9 % of a contraction of 25 µV lie within 3.3 times that; the offset of the amplifier takes part of the way.
        Assert.InRange(report.Sites[0].RoomTimes!.Value, 2, 8);
        Assert.True(report.Sites[1].RoomTimes > 20);
    }

    [Fact]
    public void WhileItGrowsATrialThatHasNotEndedIsNoDropout()
    {
        SessionPlan plan = PilotCase.Recorded(6);
        using TemporaryFolder folder = new();
        string file = folder.In("live.edf");
        EdfFiles.Write(MadeRecording.Make(plan with { DurationS = plan.Trials[1].OnsetS + 2 }), file);
        StudySetup setup = SetupFile.Read(folder.Write("setup.toml", SetupText.Of(plan)));

        PilotReport Read(bool isGrowing) => PilotAudit.Of(RecordingList.Find([file], [])[0], setup, DefaultCriteria.All, null, null, CancellationToken.None, isGrowing);

        Assert.DoesNotContain(Read(isGrowing: true).Sites, site => site.GradeOf("dropout") != Grade.Pass);
        Assert.Contains(Read(isGrowing: false).Sites, site => site.GradeOf("dropout") != Grade.Pass);
    }

    private static PilotReport Without(string setup)
    {
        using TemporaryFolder folder = new();
        string file = folder.In("pilot.edf");
        EdfFiles.Write(MadeRecording.Make(PilotCase.Recorded(1)), file);
        StudySetup written = setup.Length == 0 ? StudySetup.Empty : SetupFile.Read(folder.Write("setup.toml", setup));
        return PilotAudit.Of(RecordingList.Find([file], [])[0], written, DefaultCriteria.All, null, null, CancellationToken.None);
    }
}
