using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Detectability;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Pages;
using ChannelAudit.Reports.Silence;
using ChannelAudit.Reports.Tests.Figures;

namespace ChannelAudit.Reports.Tests.Silence;

/// <summary>What a study of planted faults says in each of its forms.</summary>
public sealed class SilenceTests
{
    private static readonly DetectedFault Mains = new(
        "line-noise", "line-noise", "mains in one channel", "µV rms", [new(1, 20, 4, 0), new(2, 20, 12, 0), new(3, 20, 19, 2), new(5, 20, 20, 15)], null);

    [Fact]
    public void ASizeCountsOnlyWhenAllWorseOnesAreFoundAsOften()
    {
        DetectedFault wavering = Mains with { Points = [new(1, 10, 9, 0), new(2, 10, 3, 0), new(3, 10, 9, 0)] };

        Assert.Equal((2.0, 3.0), (Mains.SizeFoundAt(0.5), Mains.SizeFoundAt(0.9)));
        Assert.Equal(3, wavering.SizeFoundAt(0.5));
        Assert.Null((Mains with { Points = [new(1, 10, 0, 0)] }).SizeFoundAt(0.5));
    }

    [Fact]
    public void WithoutAPlaceNothingIsSaid()
    {
        DetectedPoint none = new(1, 0, 0, 0);

        Assert.Null(none.FoundShare);
        Assert.Equal((0, 1), none.FoundInterval);
        Assert.Null((Mains with { Points = [none] }).SizeFoundAt(0.5));
        Assert.Equal("no place has it", SilenceWords.Count(none));
    }

    [Fact]
    public void TheTextSaysSizesCountsAndWhatWasNotAssessed()
    {
        string text = SilenceText.Render(Study(), new TerminalStyle());

        Assert.Contains("  found 9 times in 10 from 3, half of the time from 2\n", text, StringComparison.Ordinal);
        Assert.Contains("3: found 19 of 20 times (76 to 99 in 100), rejected 2\n", text, StringComparison.Ordinal);
        Assert.Contains("Not assessed: silence about these means nothing\n  a baseline that runs away: high-passed\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void TheTableHasARowASizeAndOneForWhatWasNotPlanted()
    {
        string[] lines = Encoding.UTF8.GetString(SilenceTsv.Render(Study())).TrimEnd('\n').Split('\n');

        Assert.Equal(6, lines.Length);
        Assert.StartsWith("line-noise\tline-noise\t3\tµV rms\t20\t19\t0.76", lines[3], StringComparison.Ordinal);
        Assert.Equal("drift\tdrift\tn/a\tµV/min\t0\t0\tn/a\tn/a\t0\tn/a\tn/a\thigh-passed", lines[5]);
    }

    [Fact]
    public void TheFileIsReadBack()
    {
        byte[] json = SilenceJson.Render(Study(), "0.1.0");

        (string version, DetectabilityResult read) = SilenceJson.Read(json, "detectability.json");

        Assert.Equal("0.1.0", version);
        Assert.Equal(json, SilenceJson.Render(read, version));
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("[]")]
    [InlineData("{\"format\":")]
    public void WhatIsNoSuchFileIsAnError(string text) =>
        Assert.Throws<ChannelAuditException>(() => SilenceJson.Read(Encoding.UTF8.GetBytes(text), "detectability.json"));

    [Fact]
    public void ThePageHasTheSectionWithTheHashOfTheFile()
    {
        string page = Encoding.UTF8.GetString(ReportPage.OfStudy(SampleResults.Run().Audit, SampleResults.Run().Digest, null, [new KeptStudy(Study(), "abc123")]));

        Assert.Contains("id=\"silence\"", page, StringComparison.Ordinal);
        Assert.Contains("<code>abc123</code>", page, StringComparison.Ordinal);
        Assert.Contains("<bdi>&lt;b&gt;</bdi>", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1600, 1100)]
    [InlineData(800, 600)]
    public void ThePictureIsLegible(int width, int height)
    {
        Picture picture = SilenceFigure.Compose(Study(), new FigureSize(width, height));

        LabelChecks.AreLegibleAndInside(picture);
        LabelChecks.DoNotOverlap(picture);
    }

    private static DetectabilityResult Study() => new()
    {
        Id = "<b>",
        Sha256 = new string('a', 64),
        CriteriaSha256 = new string('b', 64),
        TrialsSha256 = new string('c', 64),
        UsedS = 900,
        DurationS = 1200,
        Repeats = 4,
        Faults = [Mains, new DetectedFault("drift", "drift", "a baseline that runs away", "µV/min", ImmutableArray<DetectedPoint>.Empty, "high-passed")],
    };
}
