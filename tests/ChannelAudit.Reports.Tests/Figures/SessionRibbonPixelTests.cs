using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Tests.Figures;

public sealed class SessionRibbonPixelTests
{
    [Fact]
    public void TheSameResultGivesTheSameBytes()
    {
        foreach ((string name, RecordingResult recording) in RibbonSamples.All())
        {
            byte[] first = SessionRibbon.Render(recording, FigureSize.Small);

            Assert.True(first.AsSpan().SequenceEqual(SessionRibbon.Render(recording, FigureSize.Small)), name);
        }
    }

    [Fact]
    public void ThePictureIsAsWideAsAskedAndNoHigherThanNeeded()
    {
        using Pixels full = new(SessionRibbon.Render(RibbonSamples.EightTrials(), FigureSize.Full));
        using Pixels single = new(SessionRibbon.Render(RibbonSamples.WithoutTrials(), FigureSize.Full));

        Assert.Equal(1600, full.Width);
        Assert.InRange(full.Height, 850, 900);
        Assert.Equal(1600, single.Width);
        Assert.InRange(single.Height, 300, 600);
    }

    [Fact]
    public void TheTitleIsThere()
    {
        RecordingResult recording = RibbonSamples.EightTrials();
        Label title = SessionRibbon.Compose(recording, FigureSize.Full).Labels[0];
        using Pixels pixels = new(SessionRibbon.Render(recording, FigureSize.Full));

        // Bold letters cover about a quarter of their line.
        Assert.InRange(pixels.DarkInside(title.Area) / (title.Area.Width * title.Area.Height), 0.1, 0.5);
    }

    [Fact]
    public void ARejectIsDarkAtItsTrueTimeAndNowhereElse()
    {
        RecordingResult recording = RibbonSamples.EightTrials();
        TimeAxis axis = AxisOf(recording, FigureSize.Full);
        using Pixels pixels = new(SessionRibbon.Render(recording, FigureSize.Full));

        // Trial 4 is from 44 to 52 s, trial 3 from 30 to 38 s.
        Assert.True(pixels.InColumn(axis.X(44.3), Inks.RejectFill) > 100);
        Assert.True(pixels.InColumn(axis.X(51.7), Inks.RejectFill) > 100);
        Assert.Equal(0, pixels.InColumn(axis.X(31), Inks.RejectFill));
        Assert.True(pixels.InColumn(axis.X(31), Inks.PassFill) > 100);
    }

    [Fact]
    public void TheWorseAVerdictTheHigherItsBlock()
    {
        RecordingResult recording = RibbonSamples.EightTrials();
        TimeAxis axis = AxisOf(recording, FigureSize.Full);
        using Pixels pixels = new(SessionRibbon.Render(recording, FigureSize.Full));

        // At 44.5 s only brow is a reject and the two others pass; the bar above adds a few pixels.
        int reject = pixels.InColumn(axis.X(44.5), Inks.RejectFill);
        int pass = pixels.InColumn(axis.X(44.5), Inks.PassFill) / 2;
        Assert.True(reject > 1.8 * pass);
    }

    [Fact]
    public void TimeOfWhichNothingIsStoredIsNotGrey()
    {
        RecordingResult recording = RibbonSamples.Paused();
        TimeAxis axis = AxisOf(recording, FigureSize.Full);
        using Pixels pixels = new(SessionRibbon.Render(recording, FigureSize.Full));

        // The pause is from 39 to 43.5 s; at 28.5 s there is grey and no trial.
        Assert.Equal(0, pixels.InColumn(axis.X(41), Inks.Ribbon));

        // Upright: a column is either full of line or has none; slanted stripes would leave a few pixels in each.
        int[] columns = [.. Enumerable.Range((int)axis.X(39.3), (int)(axis.X(43.2) - axis.X(39.3))).Select(x => pixels.InColumn(x, Inks.OpenLine))];
        Assert.All(columns, count => Assert.True(count is 0 or > 100));
        Assert.Contains(columns, count => count > 100);
        Assert.True(pixels.InColumn(axis.X(28.5), Inks.Ribbon) > 200);
    }

    [Fact]
    public void ABarIsThickOnlyInTheTrialsThatShowTheFault()
    {
        RecordingResult recording = RibbonSamples.ClippedPeaks();
        TimeAxis axis = AxisOf(recording, FigureSize.Full);
        Picture picture = SessionRibbon.Compose(recording, FigureSize.Full);
        Label letter = picture.Labels.First(label => string.Equals(label.Text, "C", StringComparison.Ordinal));
        using Pixels pixels = new(SessionRibbon.Render(recording, FigureSize.Full));
        int InLane(double seconds) => pixels.Inside(new Area(MathF.Floor(axis.X(seconds)), letter.Area.Top, 1, letter.Area.Height), Inks.RejectFill);

        // Trial 3 is from 15 to 18 s, trials 4 and 5 pass, trial 6 begins at 33 s; the bar ends with trial 27 at 162 s.
        Assert.InRange(InLane(16.5), 6, 8);
        Assert.InRange(InLane(25), 1, 3);
        Assert.InRange(InLane(34.5), 6, 8);
        Assert.InRange(InLane(161.5), 6, 8);
        Assert.Equal(0, InLane(163));
    }

    [Theory]
    [InlineData("eight trials", true, false)]
    [InlineData("peaks", false, true)]
    [InlineData("64 channels", true, true)]
    public void TheLegendShowsTheBarsThatAreInUse(string sample, bool hasReject, bool hasQuestionable)
    {
        RecordingResult recording = RibbonSamples.All().First(one => string.Equals(one.Name, sample, StringComparison.Ordinal)).Recording;
        Label text = SessionRibbon.Compose(recording, FigureSize.Full).Labels.First(label => label.Text.StartsWith("bar: how long", StringComparison.Ordinal));
        using Pixels pixels = new(SessionRibbon.Render(recording, FigureSize.Full));
        Area sign = new(text.Area.Left - 26, text.Area.Top, 25, text.Area.Height);

        Assert.Equal(hasReject, pixels.Inside(sign, Inks.RejectFill) > 20);
        Assert.Equal(hasQuestionable, pixels.Inside(sign, Inks.QuestionableFill) > 10);
    }

    [Theory]
    [InlineData(17, 80, 169)]
    [InlineData(12, 0, 0)]
    public void ACrossInANarrowBlockIsLargeEnoughToSeeOrLeftOut(int width, int least, int most)
    {
        Picture picture = new(100, 120);
        TrialBlock block = new(RibbonSamples.OneTrial(1, 0, 1, "fog horn"), VerdictLook.Reject, ["M"], HasOpenQuestions: false, new Area(10, 10, width, 100));
        picture.Fill(block.Area, Inks.RejectFill);
        BlockContent.Draw(picture, new RibbonScale(FigureSize.Full), block);
        using Pixels pixels = new(Png.Of(picture));

        Assert.Empty(picture.Labels);
        Assert.InRange(pixels.Inside(block.Area, Inks.Paper), least, most);
    }

    [Fact]
    public void AQuestionableBlockIsStriped()
    {
        RecordingResult recording = RibbonSamples.EightTrials();
        TimeAxis axis = AxisOf(recording, FigureSize.Full);
        using Pixels pixels = new(SessionRibbon.Render(recording, FigureSize.Full));

        Assert.True(pixels.InColumn(axis.X(72.6), Inks.QuestionableFill) > 20);
        Assert.True(pixels.InColumn(axis.X(72.6), Inks.QuestionableLine) > 8);
    }

    [Fact]
    public void NotAssessedDoesNotLookLikePass()
    {
        RecordingResult recording = RibbonSamples.NotAssessed();
        TimeAxis axis = AxisOf(recording, FigureSize.Full);
        RecordingResult onlyCheek = recording with { Channels = [recording.Channels[0]] };
        using Pixels pixels = new(SessionRibbon.Render(onlyCheek, FigureSize.Full));

        Assert.Equal(0, pixels.InColumn(axis.X(6), Inks.PassFill));
        Assert.Equal(0, pixels.InColumn(axis.X(6), Inks.PassLine));
    }

    [Fact]
    public void AnOpenQuestionChangesHowAPassLooks()
    {
        RecordingResult clean = RibbonSamples.AllPass();
        ChannelResult open = clean.Channels[0] with { NotAssessed = [new("bridge", "no rest")] };

        byte[] closed = SessionRibbon.Render(clean, FigureSize.Small);

        Assert.NotEqual(closed, SessionRibbon.Render(clean with { Channels = clean.Channels.SetItem(0, open) }, FigureSize.Small));
    }

    [Theory]
    [InlineData(77)]
    [InlineData(250)]
    public void OneRejectAmongFourHundredTrialsIsSeen(int trial)
    {
        RecordingResult recording = RibbonSamples.FourHundredTrials();
        RecordingResult onlyCheek = recording with { Channels = [recording.Channels[0]] };
        foreach (FigureSize size in new[] { FigureSize.Full, FigureSize.Small })
        {
            float x = AxisOf(onlyCheek, size).X((double)recording.Trials[trial - 1].WindowFromS + 1.5);
            using Pixels pixels = new(SessionRibbon.Render(onlyCheek, size));

            Assert.True(Enumerable.Range((int)x - 2, 5).Max(column => pixels.InColumn(column, Inks.RejectFill)) > 50);
        }
    }

    [Fact]
    public void NeighboursOfOneVerdictStayApart()
    {
        RecordingResult recording = RibbonSamples.ManyChannels(1) with { Trials = [.. Enumerable.Range(1, 40).Select(number => RibbonSamples.OneTrial(number, number * 6, 6, "calm sea"))] };
        ChannelResult bad = RibbonSamples.Channel("brow", Verdicts.Grade.Reject, recording.Trials, _ => RibbonSamples.Cell(Verdicts.Grade.Reject));
        using Pixels pixels = new(SessionRibbon.Render(recording with { Channels = [bad] }, FigureSize.Full));

        int most = Enumerable.Range(0, pixels.Height).Max(y => pixels.StretchesInRow(y, Inks.RejectFill));

        Assert.True(most >= 40, "trials without a break between them cannot be told apart");
    }

    private static TimeAxis AxisOf(RecordingResult recording, FigureSize size)
    {
        RibbonScale scale = new(size);
        return new TimeAxis(recording, scale.Margin + scale.LeftColumn, size.Width - scale.Margin);
    }
}
