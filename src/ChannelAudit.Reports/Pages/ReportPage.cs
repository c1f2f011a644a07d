using System.Collections.Immutable;
using System.Text;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Pages;

/// <summary><c>report.html</c>: one page without scripts that opens from disk and prints, worst first.</summary>
public static class ReportPage
{
    /// <summary>The page as UTF-8 bytes.</summary>
    /// <param name="run">The results.</param>
    /// <param name="figures">The pictures of its recordings.</param>
    /// <param name="pilot">What a pilot shows first; null for none.</param>
    public static byte[] Render(AuditRun run, ReportFigures figures, PilotSection? pilot = null)
    {
        ImmutableArray<RecordingResult> recordings = WorstFirst.Recordings(run.Recordings);
        string summary = RunSummary.Of(run);
        HtmlText html = new();
        html.Line("<!DOCTYPE html>").Line("<html lang=\"en\">").Line("<head>").Line("<meta charset=\"utf-8\">")
            .Line("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">")
            .Line("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data: file: 'self'\">")
            .ElementLine("title", $"Signal audit: {summary}")
            .Line("<style>").Line(ReportStyle.Css).Line("</style>").Line("</head>").Line("<body>")
            .ElementLine("a class=\"skip\" href=\"#verdicts\"", "To the verdicts").Line("<header>").ElementLine("h1", "Which channels and trials can be scored?")
            .ElementLine("p class=\"lead\"", summary).Line("</header>").Line("<main id=\"verdicts\" tabindex=\"-1\">");
        pilot?.Write(html);
        bool hasOverview = recordings.Length > 1;
        if (hasOverview)
        {
            OverviewTable.Write(html, recordings);
        }

        for (int place = 0; place < recordings.Length; place++)
        {
            RecordingSection.Write(html, recordings[place], place + 1, figures, hasOverview);
        }

        UnreadSection.Write(html, run);
        AdviceSection.Write(html, recordings);
        RepeatSection.Write(html, run);
        html.Line("</main>").Line("</body>").Line("</html>");
        return Encoding.UTF8.GetBytes(html.ToString());
    }
}
