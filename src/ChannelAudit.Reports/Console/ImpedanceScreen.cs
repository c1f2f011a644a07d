using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Impedance;
using ChannelAudit.Recordings;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Console;

/// <summary>Readings for the terminal of someone who stands beside a participant: sites worst first, then what to do.</summary>
public static class ImpedanceScreen
{
    /// <summary>The whole text, each line ended by LF.</summary>
    /// <param name="reports">The readings; with the id of the recording when the table names recordings.</param>
    /// <param name="warnings">What was odd about the table.</param>
    /// <param name="style">What the terminal can show.</param>
    public static string Render(ImmutableArray<(string? Recording, ImpedanceReport Report)> reports, ImmutableArray<Warning> warnings, TerminalStyle style)
    {
        StringBuilder text = new();
        foreach ((string? recording, ImpedanceReport report) in reports)
        {
            Head(text, recording, report, style);
            ImpedanceRows.Write(text, report, style);
            Electrodes(text, report, style);
            Across(text, report, style);
            text.Append('\n');
            Steps(text, report, style);
        }

        foreach (Warning warning in warnings)
        {
            Line(text, $"warning: {warning.File}, {warning.Place}: {warning.Message}", style);
        }

        if (reports.Any(entry => ImpedanceAdvice.TouchesSkin(entry.Report)))
        {
            Line(text, ImpedanceAdvice.Caution, style);
        }

        Line(text, ImpedanceAdvice.Apart, style);
        return TerminalText.Plain(text.ToString(), style);
    }

    private static void Head(StringBuilder text, string? recording, ImpedanceReport report, TerminalStyle style)
    {
        string named = recording is null ? report.FileName : $"{recording} ({report.FileName})";
        string latest = report.LatestAt is { } time ? $", latest reading at {time.Clock}" : string.Empty;
        string after = report.IsAfterTheSession ? ", after the session" : string.Empty;
        Line(text, $"{named}: {Quantities.Many(report.Sites.Length, "site")}{latest}{after}. In kΩ: good below 5, wait 5 to 20, redo above 20.", style);
        text.Append('\n');
    }

    // The head of the table says a and b, the advice the ids.
    private static void Electrodes(StringBuilder text, ImpedanceReport report, TerminalStyle style)
    {
        string[] named = [.. report.Sites.Where(site => !site.Electrodes.IsEmpty).Select(site => $"{site.Name} {site.NameOfA}, {site.NameOfB}")];
        if (named.Length > 0)
        {
            Line(text, $"a and b: {string.Join("; ", named)}", style);
        }
    }

    private static void Across(StringBuilder text, ImpedanceReport report, TerminalStyle style)
    {
        foreach (AcrossImpedance across in report.Across)
        {
            string expected = across.ExpectedKohm is { } sum ? $"; the two contacts make {ImpedanceWords.Number(sum)}" : string.Empty;
            string verdict = across.SaysJoined ? "joined?" : across.ExpectedKohm is null ? "not low" : "not joined there";
            Line(text, $"across {across.Reading.From} to {across.Reading.To}: {ImpedanceWords.Number(across.Reading.Kohm)}{expected}: {verdict}", style);
        }

        string missing = ImpedanceAdvice.NotReadAcross(report);
        if (missing.Length > 0)
        {
            Line(text, missing, style);
        }
    }

    private static void Steps(StringBuilder text, ImpedanceReport report, TerminalStyle style)
    {
        const string indent = "   ";
        ImmutableArray<(string About, string Seen, string Advice)> advice = ImpedanceAdvice.Of(report);
        for (int i = 0; i < advice.Length; i++)
        {
            string begin = $"{(i + 1).Plain()}. ".PadRight(indent.Length);
            foreach (string part in new[] { $"{advice[i].About}: {advice[i].Seen}", "-> " + advice[i].Advice })
            {
                foreach (string line in TerminalText.Wrap(Shown(part, style), style.Columns - indent.Length))
                {
                    text.Append(begin).Append(line).Append('\n');
                    begin = indent;
                }
            }
        }

        text.Append(advice.IsEmpty ? report.Grade == ImpedanceGrade.Good ? "Nothing to do.\n\n" : string.Empty : "\n");
    }

    // Before it is broken into lines: in ASCII the sign for ohm takes three columns.
    private static string Shown(string text, TerminalStyle style) => TerminalText.Plain(TerminalText.Clean(text), style);

    private static void Line(StringBuilder text, string line, TerminalStyle style)
    {
        foreach (string part in TerminalText.Wrap(Shown(line, style), style.Columns))
        {
            text.Append(part).Append('\n');
        }
    }
}
