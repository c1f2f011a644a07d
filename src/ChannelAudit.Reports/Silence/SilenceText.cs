using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Detectability;
using ChannelAudit.Reports.Console;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Silence;

/// <summary>The study as lines for a terminal and for <c>detectability.txt</c>.</summary>
public static class SilenceText
{
    /// <summary>The whole text.</summary>
    /// <param name="result">The study.</param>
    /// <param name="style">What the terminal can show.</param>
    public static string Render(DetectabilityResult result, TerminalStyle style)
    {
        ArgumentNullException.ThrowIfNull(result);
        StringBuilder text = new();
        TerminalText.AppendLines(text, $"{SilenceWords.Title}: {TerminalText.Clean(result.Id)}", string.Empty, string.Empty, style);
        TerminalText.AppendLines(text, SilenceWords.Done(result), string.Empty, string.Empty, style);
        foreach (DetectedFault fault in SilenceWords.Planted(result))
        {
            text.Append('\n');
            TerminalText.AppendLines(text, $"{fault.Title} ({fault.Name}), {fault.Unit}", string.Empty, "  ", style);
            TerminalText.AppendLines(
                text,
                $"found 9 times in 10 {SilenceWords.From(fault, SilenceWords.Mostly)}, half of the time {SilenceWords.From(fault, SilenceWords.Half)}",
                "  ",
                "  ",
                style);
            foreach (DetectedPoint point in fault.Points)
            {
                TerminalText.AppendLines(text, $"{Quantities.Short(point.Size),7}: {SilenceWords.Count(point)}", "  ", "           ", style);
            }
        }

        AddNotPlanted(text, SilenceWords.NotPlanted(result), style);
        text.Append('\n');
        TerminalText.AppendLines(
            text,
            "Planted are models of faults, not faults; a fault of another shape may be found sooner, later or not at all. In brackets: 95 % interval (Wilson).",
            string.Empty,
            string.Empty,
            style);
        return TerminalText.Plain(text.ToString(), style);
    }

    private static void AddNotPlanted(StringBuilder text, ImmutableArray<DetectedFault> faults, TerminalStyle style)
    {
        if (faults.IsEmpty)
        {
            return;
        }

        text.Append("\nNot assessed: silence about these means nothing\n");
        foreach (DetectedFault fault in faults)
        {
            TerminalText.AppendLines(text, $"{SilenceWords.NameOf(fault)}: {TerminalText.Clean(fault.NotAssessed!)}", "  ", "    ", style);
        }
    }
}
