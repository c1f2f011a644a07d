using System.Text.RegularExpressions;
using ChannelAudit.Impedance;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Tests.Console;

public sealed class ImpedanceScreenTests
{
    private static readonly TerminalStyle Style = new();

    [Fact]
    public void ANarrowTerminalGetsTheSameInOtherLines() => Golden.Match("impedance-40.txt", Render(Style with { Width = 40 }));

    [Fact]
    public void AnAsciiTerminalGetsAscii()
    {
        string text = Render(Style with { Ascii = true });

        Golden.Match("impedance-ascii.txt", text);
        Assert.All(text, character => Assert.True(character == '\n' || char.IsBetween(character, ' ', '~')));
    }

    [Fact]
    public void ColourComesOnlyWhenAskedForAndAddsNothingElse()
    {
        string coloured = Render(Style with { Colour = true });

        Assert.Contains("\u001b[1;35m\u25A1 redo\u001b[0m", coloured, StringComparison.Ordinal);
        Assert.Equal(Render(Style), Regex.Replace(coloured, "\u001b\\[[0-9;]*m", string.Empty, RegexOptions.None, TimeSpan.FromSeconds(5)));
    }

    [Theory]
    [InlineData(100, false)]
    [InlineData(100, true)]
    [InlineData(80, false)]
    [InlineData(60, true)]
    [InlineData(40, false)]
    public void NoLineIsWiderThanTheTerminal(int width, bool isAscii) =>
        Assert.All(Render(Style with { Width = width, Ascii = isAscii }).Split('\n'), line => Assert.True(TerminalText.Width(line) <= width, line));

    [Fact]
    public void NamesFromFilesCannotReachTheTerminal()
    {
        ImpedanceReport report = SampleReadings.Report("\u001b[31mred", "before\u001b[0m");
        string text = ImpedanceScreen.Render([("\u001b[1m", report)], [new Warning("\u001b", "line 2", "odd")], Style);

        Assert.DoesNotContain('\u001b', text);
    }

    [Fact]
    public void EveryGradeHasAWordAndTwoShapesOfItsOwn()
    {
        ImpedanceGrade?[] grades = [null, .. Enum.GetValues<ImpedanceGrade>()];

        Assert.Equal(grades.Length, grades.Select(ImpedanceGradeWords.Word).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(grades.Length, grades.Select(ImpedanceGradeWords.Shape).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(grades.Length, grades.Select(ImpedanceGradeWords.AsciiShape).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(grades.Length, grades.Select(ImpedanceGradeWords.Urgency).Distinct().Count());
    }

    private static string Render(TerminalStyle style) => ImpedanceScreen.Render(
        [("K07", SampleReadings.Report())], [new Warning("K07.tsv", "line 9", "no value: this reading counts as not taken")], style);
}
