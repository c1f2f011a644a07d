using System.Globalization;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Reviewing;
using ChannelAudit.Reports.Tests.Figures;
using ChannelAudit.Verdicts;
using Color = ScottPlot.Color;

namespace ChannelAudit.Reports.Tests.Reviewing;

/// <summary>The picture of a cell, by the places of its texts.</summary>
public sealed class CellFigureTests
{
    private static readonly CellLook Usual = new(860, 440, 1, IsDark: false);

    public static TheoryData<int, int, int, int> Sizes => new()
    {
        { 860, 440, 1, 1 }, { 860, 440, 1, 3 }, { 860, 440, 1, 5 }, { 480, 320, 1, 5 }, { 1600, 900, 2, 5 }, { 1200, 700, 1, 5 },
    };

    [Theory]
    [MemberData(nameof(Sizes))]
    public void TextsAreApartAndInside(int width, int height, int scale, int channels)
    {
        CellScene scene = Scenes.Of([.. Enumerable.Range(0, channels).Select(i => 17.0 * (i + 1))]) with { Marks = Scenes.Marks, Rails = [15.8 + 20, 15.8 - 20] };

        foreach (CellScene one in new[] { scene, Scenes.Halved(scene), scene with { Behind = "high-pass 20 Hz (order 2)" } })
        {
            Picture picture = CellFigure.Compose(one, new CellLook(width, height, scale, IsDark: false));
            LabelChecks.AreLegibleAndInside(picture);
            LabelChecks.DoNotOverlap(picture);
        }
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void EveryLaneHasANumberAboveZeroAndOneBelow(int width, int height, int scale, int channels)
    {
        Picture picture = CellFigure.Compose(Scenes.Of([.. Enumerable.Repeat(17.0, channels)]), new CellLook(width, height, scale, IsDark: false));
        float[] tops = [.. picture.Labels.Where(label => label.Text.StartsWith("site ", StringComparison.Ordinal)).Select(label => label.Area.Top), height];
        for (int lane = 0; lane < channels; lane++)
        {
            string[] texts = [.. picture.Labels.Where(label => label.Area.Left < width / 2f && label.Area.Top >= tops[lane] && label.Area.Top < tops[lane + 1]).Select(label => label.Text)];
            bool hasNumbers = texts.Any(text => Number(text) > 0) && texts.Any(text => Number(text) < 0);

            Assert.True(hasNumbers || texts.Any(text => text.StartsWith("\u00B5V, lines at \u00B115", StringComparison.Ordinal)), string.Join(" | ", texts));
            Assert.Contains(texts, text => text.StartsWith("\u00B5V", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void AFlatTraceSaysSoAndHasNoInventedNumbers()
    {
        Picture picture = CellFigure.Compose(Scenes.Of(0), Usual);

        Assert.Contains(picture.Labels, label => label.Text is "\u00B5V, flat at 15.8");
        Assert.DoesNotContain(picture.Labels, label => label.Area.Left < 100 && Number(label.Text) is not null);
    }

    [Fact]
    public void TimesOfTheRecordingAreThoseOfAClockAndNeverBeforeIt()
    {
        CellScene early = Scenes.Of(17) with { FromS = -0.5, ToS = 3.5, WindowFromS = -0.2, WindowToS = 3 };

        Assert.Equal(["02:35", "02:36", "02:37", "02:38"], Times(Scenes.Of(17)), StringComparer.Ordinal);
        Assert.Equal(["00:00", "00:01", "00:02", "00:03"], Times(early), StringComparer.Ordinal);
        Assert.Equal(["0 s", "1 s", "2 s", "3 s"], Times(Scenes.Of(17) with { IsClock = false, ZeroS = 155 }), StringComparer.Ordinal);
        Assert.Contains("-1 s", Times(Scenes.Of(17) with { IsClock = false, ZeroS = 156 }), StringComparer.Ordinal);
    }

    [Fact]
    public void LettersStandBesideTheirLanesAboveTheTraceTheWorstFirst()
    {
        Picture picture = CellFigure.Compose(Scenes.Of(17) with { Marks = Scenes.Marks }, Usual);
        Label[] letters = [.. picture.Labels.Where(label => label.Text is "F" or "L" or "R")];

        // Numbers of the trace begin below the last letter.
        float numbers = picture.Labels.Where(label => label.Area.Left < 60 && Number(label.Text) is not null).Min(label => label.Area.Top);
        Assert.Equal(["F", "L", "R"], letters.Select(label => label.Text), StringComparer.Ordinal);
        Assert.All(letters, letter => Assert.True(letter.Area.Top < numbers && letter.Area.Right < 60));
        Assert.Empty(CellMarkLanes.Letters(Scenes.Of(17)));
    }

    [Fact]
    public void OnlySamplesAtFaultAreTinted()
    {
        CellScene exact = Scenes.Of(0) with { Marks = [new(156, 158, "F", Grade.Reject, IsExact: true)] };
        CellScene whole = Scenes.Of(0) with { Marks = [new(155, 158, "L", Grade.Reject)] };

        Assert.True(Count(exact, CellInks.Light.RejectTint) > 1000);
        Assert.Equal(0, Count(whole, CellInks.Light.RejectTint));
        Assert.True(Count(whole, CellInks.Light.Reject) > 1000);
    }

    [Fact]
    public void RailsAreDrawnWhereTheTraceComesNearThem()
    {
        CellScene near = Scenes.Of(17) with { Rails = [15.8 - 18, 15.8 + 18] };

        Assert.Contains(CellFigure.Compose(near, Usual).Labels, label => label.Text.EndsWith("; broken line: limit of the input", StringComparison.Ordinal));
        Assert.DoesNotContain(
            CellFigure.Compose(near with { Rails = [-3000, 3000] }, Usual).Labels, label => label.Text.Contains("limit of the input", StringComparison.Ordinal));
    }

    [Fact]
    public void MissingSamplesAreHatchedAndNamed()
    {
        CellScene scene = Scenes.Halved(Scenes.Of(17, 17));

        Assert.Equal(2, CellFigure.Compose(scene, Usual).Labels.Count(label => label.Text is "nothing stored"));
        Assert.True(Count(scene, CellInks.Light.Gap) > 1000);
    }

    [Fact]
    public void WithoutASignalTheSpectrumHasWordsAndNoScale()
    {
        CellScene flat = Scenes.Of(0) with { Spectrum = Scenes.Spectrum with { IsFlat = true } };

        Assert.Contains(CellFigure.Compose(flat, Usual).Labels, label => label.Text is "no signal: the window is flat");
        Assert.DoesNotContain(CellFigure.Compose(flat, Usual).Labels, label => label.Text.EndsWith(" Hz", StringComparison.Ordinal));
        Assert.Contains(CellFigure.Compose(Scenes.Of(17), Usual).Labels, label => label.Text is "5 segments of 1 s");
    }

    [Fact]
    public void BehindAFilterThePictureSaysSoTwice()
    {
        Picture picture = CellFigure.Compose(Scenes.Of(17, 17) with { Behind = "high-pass 20 Hz (order 2)" }, Usual);

        Assert.Equal(1, picture.Labels.Count(label => label.Text is "\u00B5V, behind high-pass 20 Hz (order 2)"));
        Assert.Contains(picture.Labels, label => label.Text is "behind the filter");
    }

    [Fact]
    public void TheSameSceneGivesTheSameBytes()
    {
        CellScene scene = Scenes.Of(17, 5, 3) with { Marks = Scenes.Marks };

        Assert.Equal(CellFigure.Render(scene, Usual), CellFigure.Render(scene, Usual));
        Assert.NotEqual(CellFigure.Render(scene, Usual), CellFigure.Render(scene, Usual with { IsDark = true }));
    }

    private static double? Number(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) ? value : null;

    private static int Count(CellScene scene, Color color)
    {
        using Pixels pixels = new(CellFigure.Render(scene, Usual));
        return pixels.Inside(new Area(0, 0, pixels.Width, pixels.Height), color);
    }

    private static string[] Times(CellScene scene)
    {
        Picture picture = CellFigure.Compose(scene, Usual);
        float bottom = picture.Labels.Max(label => label.Area.Top);
        return [.. picture.Labels.Where(label => label.Area.Top >= bottom - 1 && !label.Text.EndsWith("Hz", StringComparison.Ordinal)).Select(label => label.Text)];
    }
}
