using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;

namespace ChannelAudit.Reports.Tests.Figures;

public sealed class TextMeasureTests
{
    private static readonly TextStyle Style = new(16, Bold: false, Inks.Ink);

    [Theory]
    [InlineData("calm sea", 500, "calm sea")]
    [InlineData("calm sea", 0, "")]
    public void ATextThatFitsStaysAndOneWithoutRoomGoes(string text, float width, string fitted) => Assert.Equal(fitted, TextMeasure.Fit(text, Style, width));

    [Fact]
    public void WhatDoesNotFitIsCutAsLateAsPossible()
    {
        string text = new('n', 80);

        string fitted = TextMeasure.Fit(text, Style, 200);

        Assert.EndsWith("\u2026", fitted, StringComparison.Ordinal);
        Assert.InRange(TextMeasure.Width(fitted, Style), 200 - TextMeasure.Width("n", Style), 200);
    }

    [Fact]
    public void ASurrogatePairIsNotCutInHalf()
    {
        string text = string.Concat(Enumerable.Repeat("\U0001D11E", 20));

        string fitted = TextMeasure.Fit(text, Style, 100);

        Assert.All(fitted.EnumerateRunes(), rune => Assert.NotEqual(0xFFFD, rune.Value));
    }

    [Fact]
    public void LinesBreakBetweenWordsAndLoseNone()
    {
        const string text = "the lighthouse turns and the fog horn sounds over the calm harbour";

        var lines = TextMeasure.Wrap(text, Style, 160, 10);

        Assert.True(lines.Length > 1);
        Assert.Equal(text, string.Join(' ', lines));
        Assert.All(lines, line => Assert.True(TextMeasure.Width(line, Style) <= 160));
    }

    [Fact]
    public void AWordWiderThanTheLineIsBroken()
    {
        var lines = TextMeasure.Wrap(new string('m', 60), Style, 160, 20);

        Assert.Equal(60, lines.Sum(line => line.Length));
        Assert.All(lines, line => Assert.True(TextMeasure.Width(line, Style) <= 160));
    }
}
