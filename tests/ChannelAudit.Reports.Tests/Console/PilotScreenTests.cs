using System.Collections.Immutable;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Tests.Figures;
using Xunit;

namespace ChannelAudit.Reports.Tests.Console;

public sealed class PilotScreenTests
{
    public static TheoryData<string, int> Cases()
    {
        TheoryData<string, int> data = [];
        foreach (string name in new[] { "start", "bridge", "suspected", "eight sites", "long names", "no traces", "24 channels" })
        {
            foreach (int width in new[] { 40, 60, 80, 100 })
            {
                data.Add(name, width);
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void NoLineIsWiderThanTheTerminal(string name, int width) =>
        Assert.All(Render(name, width).Split('\n'), line => Assert.True(TerminalText.Width(line) <= width, line));

    [Fact]
    public void ANarrowTerminalGetsAListWithTheSameNumbers()
    {
        string wide = Render("bridge", 100), narrow = Render("bridge", 40);

        Assert.Contains("\nverdict         site   own task", wide, StringComparison.Ordinal);
        Assert.DoesNotContain("verdict  ", narrow, StringComparison.Ordinal);
        Assert.Contains("own task +18 dB", narrow.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("rest 2 \u00B5V", narrow, StringComparison.Ordinal);
    }

    [Fact]
    public void MarksThatSeemLateAreSaidBeforeWhatToDo()
    {
        PilotReport late = PilotSamples.Of("bridge") with { MarksLateS = 2 };
        string text = PilotScreen.Render(late, AttemptSeries.With([], late, null), new TerminalStyle());

        Assert.InRange(text.IndexOf("The task marks seem 2.0 s late", StringComparison.Ordinal), 0, text.IndexOf("Do next", StringComparison.Ordinal));
    }

    private static string Render(string name, int width)
    {
        PilotReport report = PilotSamples.Of(name);
        return PilotScreen.Render(report, AttemptSeries.With([], report, null), new TerminalStyle(Width: width));
    }
}
