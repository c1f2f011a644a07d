using ChannelAudit.Impedance;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Pages;

/// <summary>The impedance readings of a recording: a table of their own, apart from every verdict.</summary>
internal static class ImpedanceSection
{
    /// <summary>Writes the section; nothing when no readings were given.</summary>
    public static void Write(HtmlText html, ImpedanceReport? report)
    {
        if (report is null)
        {
            return;
        }

        html.ElementLine("h3", "Impedance readings").Table(
            "impedance",
            $"Latest reading of each pair, the most urgent site first, in k\u03A9: good below 5, wait 5 to 20, redo above 20. {ImpedanceAdvice.Apart}",
            "Readings", "Site", "a to b", "a to ground", "b to ground", "a, b, ground alone");
        foreach (SiteImpedance site in report.Sites.OrderByDescending(site => ImpedanceGradeWords.Urgency(site.Grade)))
        {
            html.Markup("<tr><td>").ImpedanceMark(site.Grade).Markup("</td><th scope=\"row\">").Label(site.Name).Markup("</th>");
            foreach (PairImpedance pair in site.Pairs)
            {
                Pair(html, pair);
            }

            html.Element("td", Alone(site)).Line("</tr>");
        }

        html.EndTable();
        Notes(html, report);
    }

    private static void Pair(HtmlText html, PairImpedance pair)
    {
        html.Markup("<td>").Text(pair.Kohm is { } kohm ? ImpedanceWords.Number(kohm) + " " : string.Empty).ImpedanceMark(pair.Grade);
        if (pair.Course is { Readings.Length: > 1 } course)
        {
            string earlier = string.Join(", ", course.Readings.SkipLast(1).Select(reading => ImpedanceWords.Number(reading.Kohm)
                + (reading.Time is { } time ? $" at {time.Clock}" : string.Empty) + (reading.Phase is { } phase ? $" ({phase})" : string.Empty)));
            html.Markup("<br>").Element("span class=\"note\"", $"earlier: {earlier}");
        }

        html.Markup("</td>");
    }

    private static string Alone(SiteImpedance site) => site.Solved is { } solved && !site.IsDoubted
        ? $"{ImpedanceWords.Number(solved.AKohm)}, {ImpedanceWords.Number(solved.BKohm)}, {ImpedanceWords.Number(solved.GroundKohm)}"
        : "not known";

    private static void Notes(HtmlText html, ImpedanceReport report)
    {
        html.Line("<ul>");
        foreach (AcrossImpedance across in report.Across)
        {
            string expected = across.ExpectedKohm is { } sum ? $", the two contacts make {ImpedanceWords.Kohm(sum)}" : string.Empty;
            html.ElementLine("li", $"across {across.Reading.From} to {across.Reading.To}: {ImpedanceWords.Kohm(across.Reading.Kohm)}{expected}");
        }

        if (ImpedanceAdvice.NotReadAcross(report) is { Length: > 0 } missing)
        {
            html.ElementLine("li", missing);
        }

        foreach (ImpedanceWarning warning in report.Warnings)
        {
            html.Markup("<li>").Element("bdi", string.Join(" and ", warning.Sites)).Text($": {warning.Seen}").Line("</li>");
        }

        html.Markup("<li>from ").Label(report.FileName).Markup(", SHA-256 ").Element("code", report.Sha256).Line("</li>").Line("</ul>");
    }
}
