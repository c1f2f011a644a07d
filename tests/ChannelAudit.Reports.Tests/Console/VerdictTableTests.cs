using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Tests.Console;

public sealed class VerdictTableTests
{
    private static readonly TerminalStyle Style = new();

    [Fact]
    public void OneRecordingIsItsChannelsWorstFirst() => Golden.Match(
        "console-one.txt", VerdictTable.Render(SampleResults.Run(SampleResults.Faulty()), "audit", Style));

    [Fact]
    public void SeveralRecordingsAreAListAndTheWorstInDetail() => Golden.Match(
        "console-many.txt", VerdictTable.Render(SampleResults.Run(), "audit", Style));

    [Fact]
    public void AnAsciiTerminalGetsAscii()
    {
        string text = VerdictTable.Render(SampleResults.Run(), "audit", Style with { Ascii = true });

        Golden.Match("console-ascii.txt", text);
        Assert.All(text, character => Assert.True(character == '\n' || char.IsBetween(character, ' ', '~')));
    }

    [Fact]
    public void ColourComesOnlyWhenAskedForAndAddsNothingElse()
    {
        string plain = VerdictTable.Render(SampleResults.Run(), "audit", Style);
        string coloured = VerdictTable.Render(SampleResults.Run(), "audit", Style with { Colour = true });

        Assert.DoesNotContain('\u001b', plain);
        Assert.Contains("\u001b[1;35m\u25A0 reject", coloured, StringComparison.Ordinal);
        Assert.Equal(plain, System.Text.RegularExpressions.Regex.Replace(coloured, "\u001b\\[[0-9;]*m", string.Empty, System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(5)));
    }

    [Theory]
    [InlineData(100)]
    [InlineData(80)]
    [InlineData(60)]
    public void NoLineIsWiderThanTheTerminal(int width)
    {
        AuditRun run = SampleResults.Run(SampleResults.Faulty(), SampleResults.Hostile(), SampleResults.Clean(new string('n', 90)));

        string text = VerdictTable.Render(run, "audit", Style with { Width = width });

        Assert.All(text.Split('\n'), line => Assert.True(TerminalText.Width(line) <= width, line));
    }

    [Fact]
    public void LabelsCannotSteerTheTerminal()
    {
        string text = VerdictTable.Render(SampleResults.Run(SampleResults.Hostile()), "audit\u001b]0;x\u0007", Style);

        Assert.All(text, character => Assert.True(character == '\n' || !char.IsControl(character)));
        Assert.DoesNotContain('\u202E', text);
    }

    [Fact]
    public void ManyFaultyRecordingsStayOnAFewScreens()
    {
        AuditRun run = SampleResults.Run([.. Enumerable.Range(10, 60).Select(number => SampleResults.Faulty() with { Id = $"p{number.Plain()}" })]);

        string text = VerdictTable.Render(run, "audit", Style);

        Assert.Equal(VerdictTable.DetailedRecordings, text.Split('\n').Count(line => line.Contains(": EDF+C", StringComparison.Ordinal)));
    }

    [Fact]
    public void ACommaCultureChangesNothing() => Assert.Equal(
        VerdictTable.Render(SampleResults.Run(), "audit", Style), CommaCulture.Run(() => VerdictTable.Render(SampleResults.Run(), "audit", Style)));
}
