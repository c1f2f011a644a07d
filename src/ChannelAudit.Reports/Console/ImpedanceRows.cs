using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Impedance;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Console;

/// <summary>Sites by pairs, the most urgent site first: side by side, or below each other where the terminal is too narrow for that.</summary>
internal static class ImpedanceRows
{
    private const int GradeColumns = 12;
    private const int PairColumns = 15;
    private const int ContactColumns = 20;
    private const int LongestName = 20;
    private const int RoomForTimes = 48;
    private const string Gap = "  ";
    private const string Contacts = "alone: a, b, ground";

    /// <summary>Writes the rows.</summary>
    public static void Write(StringBuilder text, ImpedanceReport report, TerminalStyle style)
    {
        int longest = Math.Min(LongestName, report.Sites.Select(site => TerminalText.Width(TerminalText.Clean(site.Name))).Append("site".Length).Max());
        bool isWide = GradeColumns + longest + (3 * PairColumns) + ContactColumns + (2 * Gap.Length) <= style.Columns;
        if (isWide)
        {
            string pairs = string.Concat(report.Sites.Take(1).SelectMany(site => site.Pairs).Select(pair => ImpedanceWords.Of(pair.Pair).PadRight(PairColumns)));
            text.Append("grade".PadRight(GradeColumns)).Append(Gap).Append(TerminalText.Fit("site", longest)).Append(Gap).Append(pairs).Append(Contacts).Append('\n');
        }

        foreach (SiteImpedance site in report.Sites.OrderByDescending(site => ImpedanceGradeWords.Urgency(site.Grade)))
        {
            string word = site.Grade is null && site.Pairs.Any(pair => pair.Grade is not null) ? "incomplete" : ImpedanceGradeWords.Word(site.Grade);
            text.Append(Graded(site.Grade, word, GradeColumns, style)).Append(Gap);
            string name = TerminalText.Clean(site.Name);
            if (isWide)
            {
                SideBySide(text.Append(TerminalText.Fit(name, longest)).Append(Gap), site, GradeColumns + longest + (2 * Gap.Length), style);
            }
            else
            {
                Stacked(text.Append(TerminalText.Fit(name, Math.Min(TerminalText.Width(name), style.Columns - GradeColumns - Gap.Length))).Append('\n'), site, style);
            }
        }
    }

    private static void SideBySide(StringBuilder text, SiteImpedance site, int indent, TerminalStyle style)
    {
        foreach (PairImpedance pair in site.Pairs)
        {
            text.Append(Graded(pair.Grade, Words(pair), PairColumns, style));
        }

        text.Append(Alone(site)).Append('\n');
        ImmutableArray<string> earlier = [.. site.Pairs.Select(pair => First(pair, withTime: true))];
        if (earlier.Any(first => first.Length > 0))
        {
            text.Append(' ', indent).Append(string.Concat(earlier.Select(first => ("  " + first).PadRight(PairColumns))).TrimEnd()).Append('\n');
        }
    }

    private static void Stacked(StringBuilder text, SiteImpedance site, TerminalStyle style)
    {
        foreach (PairImpedance pair in site.Pairs)
        {
            string first = First(pair, withTime: style.Columns >= RoomForTimes);
            text.Append(Gap).Append(TerminalText.Clean(ImpedanceWords.Of(pair.Pair, site)).PadRight("a to ground".Length)).Append(Gap)
                .Append(Graded(pair.Grade, Words(pair), first.Length == 0 ? 0 : PairColumns - 1, style)).Append(first).Append('\n');
        }

        text.Append(Gap).Append("alone: ").Append(Alone(site, TerminalText.Clean(site.NameOfA) + " ", TerminalText.Clean(site.NameOfB) + " ", "ground ")).Append('\n');
    }

    private static string Words(PairImpedance pair) =>
        pair.Kohm is { } kohm ? $"{ImpedanceWords.Number(kohm)} {ImpedanceGradeWords.Word(pair.Grade)}" : ImpedanceGradeWords.Word(null);

    // The course in a word: where the pair began, when there was more than one reading.
    private static string First(PairImpedance pair, bool withTime) => pair.Course is { Readings.Length: > 1, First: { } first }
        ? $"was {ImpedanceWords.Number(first.Kohm)}{(withTime && first.Time is { } time ? " " + time.Clock : string.Empty)}"
        : string.Empty;

    // In doubt, the solved values are no contact's own.
    private static string Alone(SiteImpedance site, string a = "", string b = "", string ground = "") => site.Solved is { } solved && !site.IsDoubted
        ? $"{a}{ImpedanceWords.Number(solved.AKohm)}, {b}{ImpedanceWords.Number(solved.BKohm)}, {ground}{ImpedanceWords.Number(solved.GroundKohm)}"
        : "not known";

    private static string Graded(ImpedanceGrade? grade, string words, int columns, TerminalStyle style)
    {
        string plain = $"{(style.Ascii ? ImpedanceGradeWords.AsciiShape(grade) : ImpedanceGradeWords.Shape(grade))} {words}";
        string fill = new(' ', Math.Max(0, columns - TerminalText.Width(plain)));
        return style.Colour && grade is { } known ? $"\u001b[{Colour(known)}m{plain}\u001b[0m{fill}" : plain + fill;
    }

    private static string Colour(ImpedanceGrade grade) => grade switch
    {
        ImpedanceGrade.Good => "36",
        ImpedanceGrade.Wait => "33",
        _ => "1;35",
    };
}
