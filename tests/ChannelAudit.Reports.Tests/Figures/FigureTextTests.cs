using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Figures.Looks;
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

    [Fact]
    public void AChannelIsNamedWithItsWorstReason()
    {
        RecordingResult recording = RibbonSamples.EightTrials();

        Assert.Equal(
            ["pass", "reject: 50 Hz mains 14.2 \u00B5V", "questionable: clipping 0.4 %, in 1 of 8 trials"],
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
        Assert.Equal("A loose lead is likely: the other sites are quiet.", headline.Cause);
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
}
