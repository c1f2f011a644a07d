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
        Assert.True(report.Sites[1].HasOpenQuestions);
        Assert.Equal((PilotAnswer.CannotSay, StepKind.Record), (report.Answer, report.Next[0].Kind));
        string line = Assert.Single(report.NotChecked, line => line.Contains("'lower brows' (brow)", StringComparison.Ordinal));
        Assert.Contains("'draw brows together'", line, StringComparison.Ordinal);
    }

    [Fact]
    public void ThreeSecondsAreNoPilot()
    {
        SessionPlan plan = PilotCase.Recorded(1) with { DurationS = 3, Trials = [] };
        PilotReport report = new PilotCase { Plan = plan, AsWrittenDown = PilotCase.Recorded(1) }.Run();

        Assert.Equal((PilotAnswer.CannotSay, StepKind.Record), (report.Answer, report.Next[0].Kind));
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
    public void ATrialThatTheRecordingEndsBeforeIsNoDropoutAndIsSaid()
    {
        SessionPlan plan = PilotCase.Recorded(6);
        using TemporaryFolder folder = new();
        string file = folder.In("live.edf");
        EdfFiles.Write(MadeRecording.Make(plan with { DurationS = plan.Trials[1].OnsetS + 2 }), file);
        StudySetup setup = SetupFile.Read(folder.Write("setup.toml", SetupText.Of(plan)));

        PilotReport Read(bool isGrowing) => PilotAudit.Of(RecordingList.Find([file], [])[0], setup, DefaultCriteria.All, null, null, CancellationToken.None, isGrowing);

        PilotReport growing = Read(isGrowing: true), ended = Read(isGrowing: false);
        Assert.All(growing.Sites.Concat(ended.Sites), site => Assert.Equal(Grade.Pass, site.GradeOf("dropout")));
        Assert.DoesNotContain(growing.NotChecked, line => line.Contains("ends before", StringComparison.Ordinal));
        Assert.Contains(ended.NotChecked, line => line.StartsWith("4 trials that the recording ends before: 'raise lip corner'", StringComparison.Ordinal));
        Assert.Equal(PilotAnswer.CannotSay, ended.Answer);
    }

    [Fact]
    public void AReadingAcrossThatShowsGelIsLookedFor()
    {
        SessionPlan plan = PilotCase.Recorded(7);
        PilotReport report = new PilotCase { Plan = plan, Readings = PilotCase.Read(plan) + "cheek\tcheek.a-eye.a\t0.4\t10:01\tbefore\n" }.Run();

        Assert.Equal(PilotAnswer.Doubtful, report.Answer);
        Assert.Equal(StepKind.Wipe, report.Next[0].Kind);
        Assert.Equal(["cheek", "eye"], report.Next[0].Sites.ToArray());
        Assert.Contains("0.4 kΩ", report.Next[0].Because, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(300, 310, 320)]
    [InlineData(340, 3, 3.2)]
    [InlineData(0.3, 0.4, 0.4)]
    public void ReadingsThatCannotBeTrueSendNobodyToTheSkin(double ab, double aGround, double bGround)
    {
        string rows = string.Concat(new[] { "cheek", "brow", "eye" }.Select(site => FormattableString.Invariant(
            $"{site}\ta-b\t{ab}\t10:00\tbefore\n{site}\ta-ground\t{aGround}\t10:00\tbefore\n{site}\tb-ground\t{bGround}\t10:00\tbefore\n")));
        PilotReport report = new PilotCase { Plan = PilotCase.Recorded(8), Readings = rows }.Run();

        Assert.Equal(PilotAnswer.Doubtful, report.Answer);
        Assert.Equal([StepKind.Measure], report.Next.Select(step => step.Kind).ToArray());
    }

    [Fact]
    public void AReadingThatRisesAtOneElectrodeAsksForItsLead()
    {
        SessionPlan plan = PilotCase.Recorded(9);
        SessionPlan loose = plan with { Sites = [plan.Sites[0] with { FirstKohm = 34 }, .. plan.Sites.Skip(1)], Faults = [new MainsPickup(["cheek"], 20)] };
        PilotReport report = new PilotCase { Plan = loose, Readings = PilotCase.Read(plan) + PilotCase.Read(loose, "10:20") }.Run();

        Assert.Equal(StepKind.Leads, report.Next[0].Kind);
    }

    [Fact]
    public void AShortRecordingWithoutASetupAsksForALongerOne()
    {
        using TemporaryFolder folder = new();
        string file = folder.In("short.edf");
        EdfFiles.Write(MadeRecording.Make(PilotCase.Recorded(11) with { DurationS = 3, Trials = [] }), file);
        PilotReport report = PilotAudit.Of(RecordingList.Find([file], [])[0], StudySetup.Empty, DefaultCriteria.All, null, null, CancellationToken.None);

        Assert.Equal((PilotAnswer.CannotSay, StepKind.Record), (report.Answer, Assert.Single(report.Next).Kind));
    }

    [Fact]
    public void ASiteToWaitForIsNamedBesideAnotherThatTheSignalAsksToWaitFor()
    {
        SessionPlan plan = PilotCase.Recorded(12);
        SessionPlan settling = plan with
        {
            Sites = [.. plan.Sites.Select(site => site with { FirstKohm = 5, SecondKohm = 5 })],
            Faults = [new Drift("cheek", 2500)],
        };
        PilotReport report = new PilotCase { Plan = settling, Readings = PilotCase.Read(settling) }.Run();

        Assert.Equal(["cheek", "brow", "eye"], Assert.Single(report.Next, step => step.Kind == StepKind.Wait).Sites.ToArray());
    }

    [Fact]
    public void ReadingsThatLackASiteAreSaid()
    {
        PilotReport report = new PilotCase { Plan = PilotCase.Recorded(10), Readings = "cheek\ta-b\t4\t10:00\tbefore\n" }.Run();

        Assert.Contains("contacts: the readings lack a pair, or all, of cheek, brow, eye", report.NotChecked, StringComparer.Ordinal);
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
