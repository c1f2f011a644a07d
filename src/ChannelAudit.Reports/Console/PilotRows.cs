using System.Text;
using ChannelAudit.Pilot;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Console;

/// <summary>The sites of a pilot with their numbers: a table, or a list where the terminal is too narrow for one.</summary>
internal static class PilotRows
{
    private const int LongestName = 16;
    private const int LeastCell = 4;
    private const string Gap = "  ";
    private const string InList = "    ";

    private static readonly string[] Heads = ["site", "own task", "rest", "mains", "room", "contacts"];

    // Shape, blank, the longest word and the gap behind it.
    private static readonly string UnderVerdict = new(' ', 16);

    /// <summary>Writes them.</summary>
    public static void Write(StringBuilder text, PilotReport report, TerminalStyle style)
    {
        string[][] rows = [Heads, .. report.Sites.Select(Cells)];
        int[] widths = [.. Enumerable.Range(0, Heads.Length).Select(column => Width(rows, column))];
        bool isTable = UnderVerdict.Length + widths.Sum() + ((Heads.Length - 1) * Gap.Length) <= style.Columns;
        text.Append('\n').Append(isTable ? "verdict".PadRight(UnderVerdict.Length) + Row(Heads, widths) + "\n" : string.Empty);
        foreach ((PilotSite site, string[] row) in report.Sites.Zip(rows.Skip(1)))
        {
            text.Append(Verdict(site, style)).Append(Gap);
            if (isTable)
            {
                text.Append(Row(row, widths)).Append('\n');
            }
            else
            {
                text.Append(TerminalText.Fit(row[0], Math.Min(TerminalText.Width(row[0]), style.Columns - UnderVerdict.Length))).Append('\n');
                string numbers = string.Join(", ", Heads.Zip(row).Skip(1).Select(pair => $"{pair.First} {pair.Second}"));
                TerminalText.AppendLines(text, numbers, InList, InList, style);
            }

            Reasons(text, report, site, isTable ? UnderVerdict : InList, style);
        }
    }

    private static string[] Cells(PilotSite site) =>
    [
        TerminalText.Clean(site.Name), TerminalText.Clean(SiteWords.Task(site)), SiteWords.Level(site.RestUv), SiteWords.Level(site.LineUv), SiteWords.Room(site),
        SiteWords.Contact(site),
    ];

    private static int Width(string[][] rows, int column) =>
        Math.Clamp(rows.Max(row => TerminalText.Width(row[column])), LeastCell, column == 0 ? LongestName : int.MaxValue);

    private static string Row(string[] cells, int[] widths) => string.Join(Gap, cells.Select((cell, i) => TerminalText.Fit(cell, widths[i]))).TrimEnd();

    private static string Verdict(PilotSite site, TerminalStyle style) => site.IsAssessed
        ? TerminalText.Verdict(site.Verdict, style)
        : TerminalText.Fit("- not judged", TerminalText.Width(TerminalText.Verdict(Grade.Pass, style with { Colour = false })));

    private static void Reasons(StringBuilder text, PilotReport report, PilotSite site, string indent, TerminalStyle style)
    {
        string[] reasons =
        [
            .. site.Reasons.Select(reason => SiteMoments.Of(report.Recording, site.Name, reason) is { Length: > 0 } when
                ? $"{ReasonWords.For(reason.Code).Name} ({when})"
                : ReasonWords.For(reason.Code).Name),
        ];
        if (reasons.Length > 0)
        {
            TerminalText.AppendLines(text, string.Join(", ", reasons), indent, indent, style);
        }
    }
}
