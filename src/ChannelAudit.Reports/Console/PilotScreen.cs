using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Console;

/// <summary>A pilot for the terminal, read at arm's length: the answer, what to do next, then a line a site.</summary>
public static class PilotScreen
{
    private const int LongestName = 16;
    private const string Gap = "  ";

    /// <summary>The whole text, each line ended by LF.</summary>
    /// <param name="report">The pilot.</param>
    /// <param name="changes">What has changed since the attempt before, a line each.</param>
    /// <param name="attempt">This attempt.</param>
    /// <param name="style">What the terminal can show.</param>
    public static string Render(PilotReport report, ImmutableArray<string> changes, PilotAttempt attempt, TerminalStyle style)
    {
        StringBuilder text = new();
        string number = attempt.Number > 1 ? $", attempt {attempt.Number.Plain()}" : string.Empty;
        Lines(text, $"{TerminalText.Clean(report.Recording.Id)}{number}: {AnswerWords.Headline(report)}", string.Empty, style);
        foreach (string change in changes)
        {
            Lines(text, "since then: " + TerminalText.Clean(change), Gap, style);
        }

        if (attempt.StartedBecause is { } because)
        {
            Lines(text, $"started although {AnswerWords.Code(report.Answer)}, because: {TerminalText.Clean(because)}", Gap, style);
        }

        Steps(text, report.Next, style);
        Sites(text, report.Sites, style);
        Joints(text, report, style);
        NotChecked(text, report, style);
        return TerminalText.Plain(text.ToString(), style);
    }

    private static void Steps(StringBuilder text, ImmutableArray<PilotStep> steps, TerminalStyle style)
    {
        if (steps.IsEmpty)
        {
            return;
        }

        text.Append("\nDo next, first things first\n");
        for (int i = 0; i < steps.Length; i++)
        {
            Lines(text, $"{(i + 1).Plain()}. {TerminalText.Clean(StepWords.Of(steps[i]))}", Gap, style, Gap + "   ");
            Lines(text, TerminalText.Clean(steps[i].Because), Gap + "   ", style);
        }

        if (StepWords.NeedCaution(steps))
        {
            Lines(text, StepWords.ShortCaution, Gap, style);
        }
    }

    private static void Sites(StringBuilder text, ImmutableArray<PilotSite> sites, TerminalStyle style)
    {
        string[][] rows =
        [
            ["site", "own task", "rest", "mains", "room", "contacts"],
            .. sites.Select(site => new[]
            {
                TerminalText.Clean(site.Name), TerminalText.Clean(SiteWords.Task(site)), SiteWords.Level(site.RestUv), SiteWords.Level(site.LineUv), SiteWords.Room(site), SiteWords.Contact(site),
            }),
        ];
        int[] widths = [.. Enumerable.Range(0, rows[0].Length).Select(column => Math.Min(column == 0 ? LongestName : int.MaxValue, rows.Max(row => TerminalText.Width(row[column]))))];
        text.Append("\nverdict         ").Append(Row(rows[0], widths)).Append('\n');
        foreach ((PilotSite site, string[] row) in sites.Zip(rows.Skip(1)))
        {
            text.Append(site.IsAssessed ? TerminalText.Verdict(site.Verdict, style) : TerminalText.Fit("- not judged", TerminalText.Width(TerminalText.Verdict(Grade.Pass, style with { Colour = false }))))
                .Append(Gap).Append(Row(row, widths)).Append('\n');
            if (!site.Reasons.IsEmpty)
            {
                Lines(text, string.Join(", ", site.Reasons.Select(reason => ReasonWords.For(reason.Code).Name)), new string(' ', 16), style);
            }
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

    private static string Row(string[] cells, int[] widths) =>
        string.Join(Gap, cells.Select((cell, i) => TerminalText.Fit(cell, Math.Max(4, widths[i])))).TrimEnd();

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

    private static void Lines(StringBuilder text, string line, string indent, TerminalStyle style, string? further = null)
    {
        string before = indent;
        foreach (string part in TerminalText.Wrap(line, style.Columns - (further ?? indent).Length))
        {
            text.Append(before).Append(part).Append('\n');
            before = further ?? indent;
        }
    }
}
