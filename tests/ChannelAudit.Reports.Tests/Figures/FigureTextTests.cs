using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Figures;

public sealed class FigureTextTests
{
    [Theory]
    [InlineData(0, 120, "whole recording")]
    [InlineData(42, 120, "from 00:42 to the end")]
    [InlineData(0, 40, "up to 00:40")]
    [InlineData(42, 61, "00:42 to 01:01")]
    public void AStretchIsSaidAsPeopleSayIt(double fromS, double toS, string words) => Assert.Equal(words, FigureText.When(fromS, toS, 120));

    [Theory]
    [InlineData(0, 120, "")]
    [InlineData(42, 120, "between 00:42 and the end")]
    [InlineData(0, 40, "between the start and 00:40")]
    [InlineData(42, 61, "between 00:42 and 01:01")]
    public void AStretchThatNeedNotHoldAllThroughIsNotSaidAsIfItDid(double fromS, double toS, string words) =>
        Assert.Equal(words, FigureText.When(fromS, toS, 120, isScattered: true));

    [Fact]
    public void ATitleTellsPeaksFromAFaultThatLasts()
    {
        RecordingResult recording = RibbonSamples.ClippedPeaks();

        Assert.Equal("eye is rejected: clipping in 3.3 % of samples, in 9 of 29 trials, between 00:15 and 02:41", Headline.Of(recording).Text);
        Assert.Equal("cheek is questionable: flat signal in 10 % of samples, 01:00 to 01:18", Headline.Of(recording, recording.Channels[0]).Text);
    }

    /// <summary>The mains of one trial stand before the motion of another in every list of reasons, but the title names the motion.</summary>
    [Fact]
    public void CauseAndAdviceOfASheetBelongToTheFaultThatItsTitleNames()
    {
        RecordingResult recording = RibbonSamples.AllPass();
        ChannelResult channel = recording.Channels[0];
        Finding mains = RibbonSamples.OneFinding(ReasonCode.LineNoise, Grade.Questionable, [channel.Name], 15, 18, "line_rms", 1.6, "uV")
            with
        { Trial = 1, Cause = "a loose lead", Evidence = [new Evidence("line_rms", 1.6, "uV", 1)] };
        Finding motion = RibbonSamples.OneFinding(ReasonCode.LowFrequency, Grade.Questionable, [channel.Name], 25, 28, "lowfreq_rms", 900, "uV")
            with
        { Trial = 2, Cause = "a turn of the head", Evidence = [new Evidence("lowfreq_rms", 900, "uV", 10)] };
        channel = channel with { Cells = channel.Cells.SetItem(0, Doubted(channel.Cells[0], mains)).SetItem(1, Doubted(channel.Cells[1], motion)) };
        recording = recording with { Channels = recording.Channels.SetItem(0, channel) };

        Headline headline = Headline.Of(recording, channel);
        string[] lines = SheetHeader.Lines(recording, channel, headline);

        Assert.EndsWith("passes, with 2 trials questionable: motion 900 \u00B5V", headline.Text, StringComparison.Ordinal);
        Assert.Equal(["Likely cause: a turn of the head; no other channel shows it.", Advice.WhatToDo(ReasonCode.LowFrequency)], lines, StringComparer.Ordinal);
    }

    [Fact]
    public void AFindingThatCountsTrialsNeedNotHoldBetweenThem()
    {
        RecordingResult recording = RibbonSamples.ClippedPeaks();
        Finding share = RibbonSamples.OneFinding(ReasonCode.Drift, Grade.Questionable, ["eye"], 15, 162, "bad_share_low", 31, "%");
        Finding slope = RibbonSamples.OneFinding(ReasonCode.Drift, Grade.Questionable, ["eye"], 15, 162, "drift_slope", 300, "uV/min");

        Assert.True(ScatteredFault.Is(recording, recording.Channels[2], share));
        Assert.False(ScatteredFault.Is(recording, recording.Channels[2], slope));
    }

    [Fact]
    public void OnlyTrialsInsideTheStretchThatShowTheFaultArePartOfIt()
    {
        ChannelResult eye = RibbonSamples.ClippedPeaks().Channels[2];
        Finding early = eye.Findings[0] with { ToS = 60 };

        Assert.Equal([3, 6, 9], ScatteredFault.TrialsOf(eye, early).Select(finding => finding.Trial!.Value));
        Assert.Empty(ScatteredFault.TrialsOf(eye, early with { Reason = ReasonCode.Flatline }));
    }

    [Fact]
    public void FaultsThatTheTitleLeavesOutAreNamed()
    {
        RecordingResult recording = RibbonSamples.ClippedPeaks();

        Assert.Equal("also: missing samples, flat signal", OtherReasons.Of(recording, ReasonCode.Clipping, 3));
        Assert.Equal("also: missing samples and more", OtherReasons.Of(recording, ReasonCode.Clipping, 1));
        Assert.Equal(string.Empty, OtherReasons.Of(RibbonSamples.AllPass(), null, 3));
        Assert.Equal(string.Empty, OtherReasons.Of(RibbonSamples.NotAssessed(), Headline.Of(RibbonSamples.NotAssessed()).Reason, 3));
    }

    [Fact]
    public void AChannelIsNamedWithItsWorstReason()
    {
        RecordingResult recording = RibbonSamples.EightTrials();

        Assert.Equal(
            ["pass", "reject: 50 Hz mains 14.2 \u00B5V, in 5 of 8 trials", "questionable: clipping in 0.4 % of samples, in 1 of 8 trials"],
            recording.Channels.Select(channel => FigureText.Of(recording, channel)),
            StringComparer.Ordinal);
    }

    [Fact]
    public void WhatIsWrongIsNamedBeforeHowManyTrialsAreBad()
    {
        RecordingResult recording = RibbonSamples.FourHundredTrials();

        Assert.Equal(ReasonCode.Bridge, FigureText.WorstFinding(recording.Channels[1])!.Reason);
    }

    [Fact]
    public void AShareOfBadTrialsNamesTheCommonestReason()
    {
        RecordingResult recording = RibbonSamples.FourHundredTrials();
        ChannelResult brow = recording.Channels[1] with { Findings = [recording.Channels[1].Findings[1]] };

        Assert.Equal("reject: 15 % of the trials are rejected, mostly joined sites", FigureText.Of(recording, brow));
    }

    [Fact]
    public void WhatWasNotAssessedIsSaidBesideAPass()
    {
        RecordingResult recording = RibbonSamples.TwoSeconds();

        Assert.Equal("pass; not assessed: joined sites, mains", FigureText.Of(recording, recording.Channels[1]));
    }

    [Fact]
    public void AChannelWithoutANumberIsNotAssessedWhateverItsVerdict()
    {
        RecordingResult recording = RibbonSamples.NotAssessed();
        ChannelResult cheek = recording.Channels[0];

        Assert.Equal("not assessed: no sample is a number", FigureText.Of(recording, cheek));
        Assert.Equal(VerdictLook.NotAssessed, VerdictLooks.Of(cheek with { Verdict = Grade.Pass }));
        Assert.Equal(VerdictLook.Reject, VerdictLooks.Of(cheek with { Verdict = Grade.Reject }));
        Assert.Equal(VerdictLook.NotAssessed, VerdictLooks.Of((CellResult?)null));
    }

    [Fact]
    public void TheHeadlineNamesTheWorstChannel()
    {
        Headline headline = Headline.Of(RibbonSamples.EightTrials());

        Assert.Equal(VerdictLook.Reject, headline.Look);
        Assert.StartsWith("brow is rejected: ", headline.Text, StringComparison.Ordinal);
        Assert.Equal("a loose lead: the other sites are quiet", headline.Cause);
    }

    [Fact]
    public void TheHeadlineCountsChannelsWithTheSameFault()
    {
        Assert.StartsWith("site 07 and 8 others are rejected: 50 Hz mains", Headline.Of(RibbonSamples.ManyChannels(64)).Text, StringComparison.Ordinal);
        Assert.StartsWith("site 07 and site 14 are rejected: 50 Hz mains", Headline.Of(RibbonSamples.ManyChannels(15)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void TheHeadlineOfACleanRecordingSaysSo()
    {
        Assert.Equal("All 3 channels pass, and so do their trials", Headline.Of(RibbonSamples.AllPass()).Text);
        Assert.Equal("The channel passes", Headline.Of(RibbonSamples.WithoutTrials()).Text);
    }

    [Fact]
    public void TheHeadlineOfPassingChannelsNamesTheirBadTrials()
    {
        RecordingResult recording = RibbonSamples.FourHundredTrials();

        Headline headline = Headline.Of(recording with { Channels = [recording.Channels[0]] });

        Assert.Equal("The channel passes; cheek has 2 trials rejected: flat signal", headline.Text);
    }

    [Fact]
    public void NothingToAuditIsNotAPass() => Assert.Equal(
        new Headline(VerdictLook.NotAssessed, "Not assessed: no channel could be audited", "Trigger: a trigger channel"),
        Headline.Of(RibbonSamples.WithoutChannels()));

    private static CellResult Doubted(CellResult cell, Finding finding) =>
        cell with { Verdict = Grade.Questionable, Reasons = [finding.Reason], Findings = [finding] };
}
