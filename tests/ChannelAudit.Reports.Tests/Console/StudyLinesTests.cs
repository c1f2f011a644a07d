using ChannelAudit.Findings;
using ChannelAudit.Reports.Console;
using ChannelAudit.Results;
using ChannelAudit.Studies;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Tests.Console;

public sealed class StudyLinesTests
{
    private static readonly TerminalStyle Style = new();

    [Fact]
    public void NothingOddIsNoLine() => Assert.Empty(StudyLines.Render([], Style));

    [Fact]
    public void EachIsALineThatNamesItsRecordings()
    {
        string text = StudyLines.Render(SampleStudy.Odd, Style with { Width = 100 });

        Assert.StartsWith("Other than the rest of the study, changes no verdict:\n- same signal: p02, p09: both hold the same signal", text, StringComparison.Ordinal);
        Assert.Contains("day2+p06 and 3 more: 1000 Hz", text.ReplaceLineEndings(" ").Replace("  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', text);
    }

    [Theory]
    [InlineData(40)]
    [InlineData(80)]
    public void NoLineIsWiderThanTheTerminal(int width) =>
        Assert.All(StudyLines.Render(SampleStudy.Odd, Style with { Width = width }).Split('\n'), line => Assert.True(TerminalText.Width(line) <= width));

    [Fact]
    public void AmongManyTheRestIsCounted() => Assert.Contains(
        "92 more lines",
        StudyLines.Render([.. Enumerable.Range(0, 100).Select(i => new StudyFinding(OddKind.Rate, [FormattableString.Invariant($"p{i}")], null, "x", "y"))], Style),
        StringComparison.Ordinal);

    [Fact]
    public void AProtocolThatWasNotKeptStandsUnderTheRecording()
    {
        RecordingResult faulty = SampleResults.Faulty();
        Finding events = SampleResults.Finding("events", Grade.Pass, ["cheek"], null, 0, 65, [], "missing: 1 of 10 'angry', after trial 4 'happy' at 20.0 s", "a trigger that was not sent");
        RecordingResult odd = faulty with { Information = [.. faulty.Information, events] };

        Assert.Contains("\nevents, changes no verdict: missing: 1 of 10 'angry'", SampleResults.Run(odd).Screen("audit", Style), StringComparison.Ordinal);
        Assert.Contains("also: events that look odd", SampleResults.Run(odd, SampleResults.Clean("x")).Screen("audit", Style), StringComparison.Ordinal);
        Assert.DoesNotContain("events that look odd", SampleResults.Run(faulty, SampleResults.Clean("x")).Screen("audit", Style), StringComparison.Ordinal);
    }
}
