using ChannelAudit.Pilot;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Face;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Tests.Figures;

public sealed class PilotFigureTests
{
    public static TheoryData<string> Names => [.. PilotSamples.All.Select(sample => sample.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void LabelsAreLegibleInsideThePictureAndApart(string name)
    {
        Picture picture = PilotFigure.Compose(PilotSamples.Of(name));

        LabelChecks.AreLegibleAndInside(picture);
        LabelChecks.DoNotOverlap(picture);
        Assert.Equal(1600, picture.Width);
        Assert.InRange(picture.Height, 1000, 1250);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void TheAnswerIsLargestAndEveryStepIsReadFromTwoMetres(string name)
    {
        PilotReport report = PilotSamples.Of(name);
        Label[] labels = [.. PilotFigure.Compose(report).Labels];
        Label answer = labels.MaxBy(label => label.Style.Size)!;

        Assert.True(answer.Style.Size >= 56);
        Assert.StartsWith(answer.Text, AnswerWords.Headline(report), StringComparison.Ordinal);
        Assert.Single(labels, label => label.Style.Size == answer.Style.Size);
        string text = string.Join(' ', labels.Where(label => label.Style.Size >= 28 && label.Area.Top > 600).Select(label => label.Text));
        Assert.All(report.Next, step => Assert.Contains(PlainText.Of(StepWords.Of(step))[..12], text, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("bridge", "bridge")]
    [InlineData("suspected", "bridge?")]
    [InlineData("eight sites", "bridge bridge?")]
    [InlineData("long names", "bridge")]
    [InlineData("start", "")]
    public void ABridgeIsNamedAndASuspicionAsked(string name, string words) =>
        Assert.Equal(words, string.Join(' ', Texts(name).Where(text => text is "bridge" or "bridge?").Order(StringComparer.Ordinal)));

    [Fact]
    public void ABridgeHasMoreRungsThanASuspicionAndInkOfItsOwn()
    {
        Assert.True(Ink("bridge", Inks.RejectTint) > 400);
        Assert.Equal(0, Ink("bridge", Inks.QuestionableFill));
        Assert.Equal(0, Ink("suspected", Inks.RejectTint));
        Assert.True(Ink("suspected", Inks.QuestionableFill) > 400);
    }

    [Fact]
    public void AJointThatTapsHaveSettledIsNotDrawn()
    {
        PilotReport settled = PilotSamples.Of("suspected");
        settled = settled with { Joints = [settled.Joints[0] with { Taps = TapVerdict.Apart }] };

        Assert.DoesNotContain(PilotFigure.Compose(settled).Labels, label => label.Text.StartsWith("bridge", StringComparison.Ordinal));
    }

    [Fact]
    public void ReadingsStandOnTheLineOfTheirSite()
    {
        PilotReport report = PilotSamples.Of("bridge");
        Label[] labels = [.. PilotFigure.Compose(report).Labels];

        // Once on the face; the eye is above the cheek, the brow above the eye.
        float[] heights = [.. new[] { "3.6 k\u03A9", "28.0 k\u03A9", "2.0 k\u03A9" }.Select(text => Assert.Single(labels, label => Is(label, text)).Area.Top)];
        Assert.Equal(heights.Order(), heights);
        Assert.Single(labels, label => string.Equals(label.Text, "contact: redo", StringComparison.Ordinal));
        Assert.DoesNotContain(Texts("suspected"), text => text.EndsWith("k\u03A9", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("bridge", "cheek", "reject: joined sites")]
    [InlineData("bridge", "brow", "pass")]
    [InlineData("start", "brow", "pass, not all judged")]
    [InlineData("nothing judged", "cheek", "not judged")]
    public void ASiteSaysItsVerdictInWordsToo(string sample, string site, string words)
    {
        Label[] labels = [.. PilotFigure.Compose(PilotSamples.Of(sample)).Labels];
        Label name = labels.Last(label => string.Equals(label.Text, site, StringComparison.Ordinal));

        Assert.Contains(labels, label => label.Area.Left == name.Area.Left && label.Area.Top == name.Area.Bottom && Is(label, words));
    }

    [Fact]
    public void ATaskShowsHowFarItStandsOutOrWhyNot()
    {
        Assert.Contains("+18 dB", Texts("start"), StringComparer.Ordinal);
        Assert.Contains("2 \u2192 22 \u00B5V", Texts("start"), StringComparer.Ordinal);
        Assert.Contains("cheek answers more", string.Join(' ', Texts("suspected")), StringComparison.Ordinal);
        Assert.Equal(3, Texts("no traces").Count(text => text is "no setup, no task" or "not known" or "not recorded"));
        Assert.Contains("no rest to", string.Join(' ', Texts("no traces")), StringComparison.Ordinal);
    }

    [Fact]
    public void TheContractionIsMarkedWhereItWas()
    {
        using Pixels pixels = new(PilotFigure.Render(PilotSamples.Of("one site")));

        // The trace has a second before and after its 4 s: the two dashed lines are two thirds of the field apart.
        int[] edges = [.. Enumerable.Range(900, 660).Where(x => pixels.InColumn(x, Inks.Muted) > 40)];
        int[] field = [.. Enumerable.Range(900, 660).Where(x => pixels.InColumn(x, Inks.Ink) > 4 && pixels.InColumn(x, Inks.Ribbon) > 60)];
        Assert.InRange((edges[^1] - edges[0]) / (double)(field[^1] - field[0]), 0.64, 0.70);
    }

    [Fact]
    public void SitesOfUnknownPlaceStandBelowTheFace()
    {
        Label[] labels = [.. PilotFigure.Compose(PilotSamples.Of("no setup")).Labels];
        float below = Assert.Single(labels, label => label.Text.StartsWith("not on the sketch", StringComparison.Ordinal)).Area.Bottom;

        Assert.All(Enumerable.Range(1, 6), i => Assert.True(labels.First(label => Is(label, $"EMG {i.Plain()}")).Area.Top > below));
        Assert.DoesNotContain(Texts("one side"), text => text.StartsWith("not on the sketch", StringComparison.Ordinal));
    }

    [Fact]
    public void WhatIsNotShownOrNotCheckedIsSaid()
    {
        Assert.Contains("and 16 sites more, none of them worse: see report.html", Texts("24 channels"), StringComparer.Ordinal);
        Assert.Contains("EMG 18", Texts("24 channels"), StringComparer.Ordinal);
        Assert.Contains(Texts("eight sites"), text => text.StartsWith("Not checked: rest as it was asked for", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void TheCautionIsWholeWhereSkinIsTouchedAndNowhereElse(string name)
    {
        PilotReport report = PilotSamples.Of(name);

        Assert.Equal(StepWords.NeedCaution(report.Next), string.Join(' ', Texts(name)).Contains(StepWords.ShortCaution, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("eight sites")]
    [InlineData("one site")]
    public void TheSameReportGivesTheSameBytes(string name) =>
        Assert.True(PilotFigure.Render(PilotSamples.Of(name)).AsSpan().SequenceEqual(PilotFigure.Render(PilotSamples.Of(name))));

    [Fact]
    public void PairsNeverCoverOneAnotherOnTheFace()
    {
        foreach ((string name, PilotReport report) in PilotSamples.All)
        {
            PairLayout layout = PairLayout.Of(report.Sites, new Area(0, 0, 560, 650), default);

            Assert.All(layout.Pairs, pair => Assert.DoesNotContain(layout.Pairs, other => other != pair && other.Overlaps(pair)));
            Assert.True(layout.Pairs.Length + layout.Elsewhere.Length == report.Sites.Length, name);
        }
    }

    private static bool Is(Label label, string text) => string.Equals(label.Text, text, StringComparison.Ordinal);

    private static string[] Texts(string name) => [.. PilotFigure.Compose(PilotSamples.Of(name)).Labels.Select(label => label.Text)];

    private static int Ink(string name, ScottPlot.Color color)
    {
        using Pixels pixels = new(PilotFigure.Render(PilotSamples.Of(name)));
        return pixels.Inside(new Area(0, 0, 770, 640), color);
    }
}
