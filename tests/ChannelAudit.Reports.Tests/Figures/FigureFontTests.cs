using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Typefaces;
using ScottPlot;

namespace ChannelAudit.Reports.Tests.Figures;

public sealed class FigureFontTests
{
    private static readonly TextStyle Style = new(40, Bold: false, Inks.Ink);

    [Theory]
    [InlineData("Arial", FontWeight.Normal, false)]
    [InlineData("DejaVu Sans", FontWeight.Bold, true)]
    [InlineData("no such font", FontWeight.Black, true)]
    [InlineData("", FontWeight.Thin, false)]
    public void EveryFontAskedForIsOurs(string name, FontWeight weight, bool isBold)
    {
        FigureFont.Install();

        SkiaSharp.SKTypeface typeface = Fonts.GetTypeface(name, weight, FontSlant.Italic, FontSpacing.Normal);

        Assert.Equal("Inter", typeface.FamilyName);
        Assert.Equal(isBold, typeface.IsBold);
    }

    [Fact]
    public void TheFontHasWhatFiguresNeed()
    {
        string needed = new string([.. Enumerable.Range(0x20, 95).Concat(Enumerable.Range(0xC0, 64)).Select(code => (char)code)])
            + "\u00B5\u03BC\u03A9\u00B2\u00B7\u2192\u2265\u2264\u2013\u2026\u03C1";

        Assert.All(needed.EnumerateRunes(), rune => Assert.True(FigureFont.Has(rune.Value), rune.ToString()));
    }

    [Theory]
    [InlineData("\u65E5")]
    [InlineData("\uFFFD")]
    public void AMissingGlyphIsAVisibleBox(string text)
    {
        Picture picture = new(200, 100);
        Area place = picture.Text(text, Style, 50, 20);
        using Pixels pixels = new(Png.Of(picture));

        Assert.True(place.Width > 20);
        Assert.True(pixels.DarkInside(place) > 0.25 * place.Width * place.Height);
    }

    [Fact]
    public void ABlankLeavesNoMark()
    {
        Picture picture = new(200, 100);
        Area place = picture.Text("\u00A0", Style, 50, 20);
        using Pixels pixels = new(Png.Of(picture));

        Assert.Equal(0, pixels.DarkInside(place));
    }

    [Theory]
    [InlineData("a\u202Eb", "a\uFFFDb")]
    [InlineData("a\r\nb\tc", "a\uFFFD\uFFFDb\uFFFDc")]
    [InlineData("a\uE000b\uF8FF", "a\uFFFDb\uFFFD")]
    [InlineData("\u00B5V \u03A9 \u65E5", "\u00B5V \u03A9 \u65E5")]
    public void WhatCannotBeDrawnAsWrittenBecomesABox(string label, string drawn) => Assert.Equal(drawn, PlainText.Of(label));

    [Fact]
    public void HalfASurrogatePairBecomesABox() => Assert.Equal("a\uFFFDb", PlainText.Of("a\uD800b"));
}
