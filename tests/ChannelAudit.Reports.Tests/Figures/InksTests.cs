using ChannelAudit.Reports.Figures.Looks;
using ScottPlot;

namespace ChannelAudit.Reports.Tests.Figures;

/// <summary>Relative luminance and contrast as WCAG 2.2 defines them (w3.org/TR/WCAG22, "relative luminance", "contrast ratio"), from memory.</summary>
public sealed class InksTests
{
    [Fact]
    public void VerdictsDifferInLightnessAlone()
    {
        double pass = Luminance(Inks.PassFill);
        double questionable = Luminance(Inks.QuestionableLine);
        double reject = Luminance(Inks.RejectFill);

        // 3:1 is what WCAG 1.4.11 asks between the parts of a graphic.
        Assert.True(Contrast(pass, questionable) >= 3);
        Assert.True(Contrast(questionable, reject) >= 3);
    }

    [Fact]
    public void TextIsReadable()
    {
        // 4.5:1 is what WCAG 1.4.3 asks of small text.
        Assert.True(Contrast(Luminance(Inks.Paper), Luminance(Inks.Muted)) >= 4.5);
        Assert.True(Contrast(Luminance(Inks.Ribbon), Luminance(Inks.Muted)) >= 4.5);
        Assert.True(Contrast(Luminance(Inks.QuestionableFill), Luminance(Inks.Ink)) >= 4.5);
        Assert.True(Contrast(Luminance(Inks.Paper), Luminance(Inks.RejectFill)) >= 4.5);
    }

    [Fact]
    public void BlackAndWhiteHaveTheLargestContrast() => Assert.Equal(21, Contrast(Luminance(Colors.White), Luminance(Colors.Black)), 6);

    private static double Contrast(double one, double other) => (Math.Max(one, other) + 0.05) / (Math.Min(one, other) + 0.05);

    private static double Luminance(Color color) => (0.2126 * Linear(color.Red)) + (0.7152 * Linear(color.Green)) + (0.0722 * Linear(color.Blue));

    private static double Linear(byte value)
    {
        double part = value / 255.0;
        return part <= 0.04045 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4);
    }
}
