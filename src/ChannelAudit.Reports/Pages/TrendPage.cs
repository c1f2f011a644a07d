using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Trends;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Trends;

namespace ChannelAudit.Reports.Pages;

/// <summary><c>trend.html</c>: what many recordings tell over time, on one page without scripts that opens from disk and prints.</summary>
/// <param name="report">What was found.</param>
/// <param name="lead">What was looked at, in sentences.</param>
/// <param name="own">One person's recordings beside the lab's usual range; null for none.</param>
public sealed class TrendPage(TrendReport report, ImmutableArray<string> lead, OwnSetups? own)
{
    /// <summary>The name of the file.</summary>
    public const string FileName = "trend.html";

    private const string Title = "What do the recordings tell over time?";

    private const string Caution =
        "Before an electrode, an amplifier or skin is touched: the maker's instructions, local protocol, ethics approval and qualified staff come first. Clean and disinfect reusable electrodes "
        + "only with what their maker names, let them dry, and take damaged ones out of use; some agents give off vapours or burn. Renew no contact by abrading again: stop at redness, pain or on request, "
        + "no alcohol and no abrasive near the eye. Only qualified staff open amplifiers or touch wiring. The page compares recordings and judges no person.";

    /// <summary>The page as UTF-8 bytes.</summary>
    /// <param name="pictures">The picture over all, and one for each story that stands for itself, in order.</param>
    public byte[] Render((byte[] All, ImmutableArray<byte[]> Stories) pictures)
    {
        HtmlText html = new();
        html.Line("<!DOCTYPE html>").Line("<html lang=\"en\">").Line("<head>").Line("<meta charset=\"utf-8\">")
            .Line("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">")
            .Line("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data: file: 'self'\">")
            .ElementLine("title", $"Over time: {Summary}")
            .Line("<style>").Line(ReportStyle.Css).Line("</style>").Line("</head>").Line("<body>")
            .ElementLine("a class=\"skip\" href=\"#changes\"", "To the changes").Line("<header>").ElementLine("h1", Title)
            .ElementLine("p class=\"lead\"", Summary).ElementLine("p class=\"facts\"", string.Join(' ', lead)).Line("</header>").Line("<main id=\"changes\" tabindex=\"-1\">");
        WriteStories(html, pictures.Stories);
        html.ElementLine("p class=\"caution\"", Caution);
        WriteAll(html, pictures.All);
        WriteSubjects(html);
        WriteOwn(html);
        WriteNotAssessed(html);
        WriteHow(html);
        html.Line("</main>").Line("</body>").Line("</html>");
        return Encoding.UTF8.GetBytes(html.ToString());
    }

    private ImmutableArray<TrendStory> Stories => [.. report.Stories.Where(story => story.PartOf is null)];

    private string Summary => Stories.IsEmpty ? "No change found in what was looked at." : $"{Quantities.Many(Stories.Length, "change")} found.";

    private void WriteStories(HtmlText html, ImmutableArray<byte[]> pictures)
    {
        html.Line("<section>").ElementLine("h2", "What changed");
        if (Stories.IsEmpty)
        {
            html.ElementLine("p", "Nothing stands out. That is no proof that nothing changed: what was not assessed, and what is too small or too short to be seen, is below.");
        }

        for (int i = 0; i < Stories.Length; i++)
        {
            TrendStory story = Stories[i];
            html.Markup($"<h3 id=\"story-{(i + 1).Plain()}\">{(i + 1).Plain()}. ").Label(TrendWords.Sentence(report, story)).Line("</h3>");
            if (i < pictures.Length)
            {
                html.Line($"<a href=\"{TrendStoryFigure.FileName(i + 1)}\"><img src=\"data:image/png;base64,{Convert.ToBase64String(pictures[i])}\" alt=\"{HtmlText.Attribute(TrendStoryFigure.Alternative(report, story))}\"></a>");
            }

            WriteFindings(html, i, story);
        }

        html.Line("</section>");
    }

    private void WriteFindings(HtmlText html, int number, TrendStory story)
    {
        html.Table("trends", "What the sentence rests on", "What", "Change", "Before", "After", "First alarm", "Now beyond the usual", "Recordings", "p, corrected");
        foreach ((TrendFinding finding, bool isPart) in story.Findings.Select(finding => (finding, false))
            .Concat(report.Stories.Where(part => part.PartOf == number).SelectMany(part => part.Findings).Select(finding => (finding, true))))
        {
            html.Markup("<tr><th scope=\"row\">").Label(isPart ? $"more than elsewhere: {TrendWords.Name(report, finding.Line)}, {TrendWords.Name(finding.Measure)}" : TrendWords.Name(finding.Measure)).Markup("</th>")
                .Element("td", $"{Verdict(finding)} ({TrendWords.Code(finding.Kind)}): {TrendWords.Change(finding)}")
                .Element("td class=\"number\"", TrendWords.Value(finding.Measure, finding.Before))
                .Element("td class=\"number\"", TrendWords.Value(finding.Measure, finding.After))
                .Element("td", finding.Chart.FirstAlarm is { } alarm ? TrendWords.Month(alarm) : "none")
                .Element("td", finding.Chart.IsBeyondNow ? "yes" : "no")
                .Element("td class=\"number\"", $"{finding.Line.Sessions.Plain()} in {finding.Line.Weeks.Plain()} weeks")
                .Element("td class=\"number\"", Probability(finding.CorrectedP)).Line("</tr>");
        }

        html.EndTable();
    }

    private static string Verdict(TrendFinding finding) => finding.IsWorse switch { true => "worse", false => "better", null => "other" };

    private static string Probability(double p) => p < 1e-4 ? "below 0.0001" : Quantities.Short(p);

    private static void WriteAll(HtmlText html, byte[] picture) => html.Line("<section>").ElementLine("h2 id=\"over-time\"", "Every measure over time")
        .Line($"<a href=\"{TrendFigure.FileName}\"><img src=\"data:image/png;base64,{Convert.ToBase64String(picture)}\" alt=\"Every measure of every lab, four weeks by four weeks. {TrendTsv.FileName} has the numbers week by week.\"></a>")
        .Line("</section>");

    private void WriteSubjects(HtmlText html)
    {
        html.Line("<section>").ElementLine("h2 id=\"numbers\"", "By lab, amplifier, site and electrode")
            .Table("trends", $"Over all time. Shares with their 95 % interval (Wilson), else the middle value; {TrendTsv.FileName} has quartiles and weeks", ["What", "Recordings", .. TrendMeasure.All.Select(Head), "Bridges a recording"]);
        Dictionary<TrendSubject, TrendRow[]> rows = TrendRow.All(report).Where(row => row.Week is null).GroupBy(row => row.Subject).ToDictionary(group => group.Key, group => group.ToArray());
        foreach (TrendSubject subject in report.Subjects)
        {
            TrendRow[] mine = rows.GetValueOrDefault(subject, []);
            html.Markup("<tr><th scope=\"row\">").Text(TrendWords.Code(subject.By) + " ");
            if (subject.By != TrendBy.Archive)
            {
                html.Label(subject.By == TrendBy.Lab || subject.Lab is null ? subject.Name : $"{subject.Name} ({subject.Lab})");
            }

            html.Markup("</th>").Element("td class=\"number\"", mine.Select(row => row.Sessions).DefaultIfEmpty(0).Max().Plain());
            foreach (TrendMeasure measure in TrendMeasure.All)
            {
                html.Element("td class=\"number\"", mine.FirstOrDefault(row => string.Equals(row.Measure, measure.Code, StringComparison.Ordinal)) is { } row ? Cell(measure, row) : Cells.Missing);
            }

            html.Element("td class=\"number\"", mine.FirstOrDefault(row => string.Equals(row.Measure, TrendRow.BridgesASession, StringComparison.Ordinal)) is { } bridges ? Quantities.Short(bridges.Value) : Cells.Missing)
                .Line("</tr>");
        }

        html.EndTable().Line("</section>");
    }

    private static string Head(TrendMeasure measure)
    {
        string name = TrendWords.Name(measure);
        return char.ToUpperInvariant(name[0]) + name[1..];
    }

    private static string Cell(TrendMeasure measure, TrendRow row) => measure.Scale == TrendScale.Share
        ? $"{TrendWords.Percent(row.Value)} ({TrendWords.Percent(row.Low!.Value)} to {TrendWords.Percent(row.High!.Value)})"
        : TrendWords.Value(measure, row.Value);

    private void WriteOwn(HtmlText html)
    {
        if (own is null)
        {
            return;
        }

        html.Line("<section>").Markup("<h2 id=\"own\">").Label(OwnWords.Title(own)).Line("</h2>");
        if (own.NotAssessed is { } cause)
        {
            html.ElementLine("p", $"Not assessed: {cause}.");
        }
        else
        {
            html.Line("<dl>");
            foreach (OwnMeasure measure in own.Measures)
            {
                html.Element("dt", Head(measure.Measure)).ElementLine("dd", OwnWords.Line(measure));
            }

            html.Line("</dl>");
        }

        html.ElementLine("p class=\"note\"", OwnWords.Meaning).Line("</section>");
    }

    private void WriteNotAssessed(HtmlText html)
    {
        ImmutableArray<TrendLine> open = [.. report.Lines.Where(line => !line.IsAssessed)];
        if (open.IsEmpty)
        {
            return;
        }

        html.Line("<section>").ElementLine("h2 id=\"not-assessed\"", "Not assessed").Line("<details>")
            .ElementLine("summary", $"{Quantities.Many(open.Length, "line")} with fewer than {TrendLine.LeastSessions.Plain()} recordings or {TrendLine.LeastWeeks.Plain()} weeks").Line("<ul>");
        foreach (IGrouping<string, TrendLine> subject in open.GroupBy(line => TrendWords.Name(report, line), StringComparer.Ordinal))
        {
            html.Markup("<li>").Label(subject.Key)
                .Text($": {string.Join(", ", subject.Select(line => $"{TrendWords.Name(line.Measure)} ({line.Sessions.Plain()} in {Quantities.Many(line.Weeks, "week")})"))}").Line("</li>");
        }

        html.Line("</ul></details>").Line("</section>");
    }

    private void WriteHow(HtmlText html) => html.Line("<section>").ElementLine("h2 id=\"how\"", "How it was looked at")
        .ElementLine("p class=\"note\"",
            $"A line is one measure of one lab, amplifier, site or electrode. Each of {report.LookedAt.Plain()} lines was tested for a step, a slow drift or an episode; probabilities are corrected for that number (Holm), so that "
            + "of a hundred archives in which nothing changes about one shows anything here. What several lines share is told once, of the thing that explains most. Changes below 15 % of a level or 5 points of a share are not told. "
            + "The moving average and the first alarm (cumulative sum) say when it would have been seen; they decide nothing. A change is no cause: what else changed at that time, a person has to know.")
        .Line("</section>");
}
