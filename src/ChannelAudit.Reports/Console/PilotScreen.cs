using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Console;

/// <summary>A pilot for the terminal, read at arm's length: the answer, what to do next, then a line a site.</summary>
public static class PilotScreen
{
    private const string Gap = "  ";

    /// <summary>The whole text, each line ended by LF.</summary>
    /// <param name="report">The pilot.</param>
    /// <param name="attempts">This attempt and those before it.</param>
    /// <param name="style">What the terminal can show.</param>
    public static string Render(PilotReport report, AttemptSeries attempts, TerminalStyle style)
    {
        StringBuilder text = new();
        string number = attempts.Place > 1 ? $", attempt {attempts.Place.Plain()}" : string.Empty;
        Lines(text, $"{TerminalText.Clean(report.Recording.Id)}{number}: {AnswerWords.Headline(report)}", string.Empty, style);
        if (!attempts.Others.IsEmpty)
        {
            string others = TerminalText.Clean(StepWords.Names(attempts.Others, string.Empty));
            Lines(text, $"this folder keeps attempts of {others} too: those of {TerminalText.Clean(attempts.Now.Participant)} are a series of their own", Gap, style);
        }

        foreach (string change in attempts.Changes)
        {
            Lines(text, "since then: " + TerminalText.Clean(change), Gap, style);
        }

        if (attempts.Now.StartedBecause is { } because)
        {
            Lines(text, $"started although {AnswerWords.Code(report.Answer)}, because: {TerminalText.Clean(because)}", Gap, style);
        }

        if (MarkWords.Of(report) is { Length: > 0 } marks)
        {
            Lines(text, marks, Gap, style);
        }

        Steps(text, report, style);
        PilotRows.Write(text, report, style);
        Joints(text, report, style);
        NotChecked(text, report, style);
        return TerminalText.Plain(text.ToString(), style);
    }

    private static void Steps(StringBuilder text, PilotReport report, TerminalStyle style)
    {
        ImmutableArray<PilotStep> steps = report.Next;
        if (steps.IsEmpty)
        {
            return;
        }

        text.Append("\nDo next, first things first\n");
        for (int i = 0; i < steps.Length; i++)
        {
            Lines(text, $"{(i + 1).Plain()}. {TerminalText.Clean(StepWords.Of(steps[i]))}", Gap, style, Gap + "   ");
            Lines(text, TerminalText.Clean(SiteMoments.Because(report, steps[i])), Gap + "   ", style);
        }

        if (StepWords.NeedCaution(steps))
        {
            Lines(text, StepWords.ShortCaution, Gap, style);
        }
    }

    private static void Joints(StringBuilder text, PilotReport report, TerminalStyle style)
    {
        string[] lines = [.. JointWords.Of(report)];
        if (lines.Length == 0)
        {
            return;
        }

        text.Append("\nBetween sites\n");
        foreach (string line in lines)
        {
            Lines(text, TerminalText.Clean(line), Gap, style, Gap + Gap);
        }
    }

    private static void NotChecked(StringBuilder text, PilotReport report, TerminalStyle style)
    {
        if (report.NotChecked.IsEmpty)
        {
            return;
        }

        text.Append("\nNot checked\n");
        foreach (string open in report.NotChecked)
        {
            Lines(text, TerminalText.Clean(open), Gap, style, Gap + Gap);
        }
    }

    private static void Lines(StringBuilder text, string line, string indent, TerminalStyle style, string? further = null) =>
        TerminalText.AppendLines(text, line, indent, further ?? indent, style);
}
