using ChannelAudit.Pilot;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Pages;

/// <summary>What the page of a pilot shows first: the answer, the picture, what to do next, and every attempt with what it changed.</summary>
public sealed class PilotSection
{
    private readonly PilotReport _report;
    private readonly AttemptSeries _attempts;
    private readonly ReadOnlyMemory<byte>? _picture;

    /// <summary>Prepares the section.</summary>
    /// <param name="report">The pilot.</param>
    /// <param name="attempts">This attempt and those before it.</param>
    /// <param name="picture">The picture as PNG; null for none.</param>
    public PilotSection(PilotReport report, AttemptSeries attempts, ReadOnlyMemory<byte>? picture)
    {
        _report = report;
        _attempts = attempts;
        _picture = picture;
    }

    /// <summary>Writes it.</summary>
    internal void Write(HtmlText html)
    {
        html.Line("<section>").ElementLine("h2", $"Can the session start? {AnswerWords.Headline(_report)}");
        if (MarkWords.Of(_report) is { Length: > 0 } marks)
        {
            html.ElementLine("p", marks);
        }

        if (_picture is { } png)
        {
            string source = "data:image/png;base64," + Convert.ToBase64String(png.Span);
            html.Line($"<a href=\"{PilotFiles.Picture}\"><img src=\"{source}\" alt=\"The sites on a face, the answer, each task's trace and what to do next\"></a>");
        }

        Steps(html);
        Attempts(html);
        html.Line("</section>");
    }

    private void Steps(HtmlText html)
    {
        if (_report.Next.IsEmpty)
        {
            return;
        }

        html.ElementLine("h3", "Do next, first things first").Line("<ol>");
        foreach (PilotStep step in _report.Next)
        {
            html.ElementLine("li", $"{StepWords.Of(step)} ({SiteMoments.Because(_report, step)})");
        }

        html.Line("</ol>");
        if (StepWords.NeedCaution(_report.Next))
        {
            html.ElementLine("p class=\"caution\"", ReasonWords.Caution);
        }
    }

    private void Attempts(HtmlText html)
    {
        html.ElementLine("h3", "Attempts").Table(
            "attempts",
            "Every pilot that this folder keeps; each is compared with the one of the same participant before it.",
            "Participant", "Recording", "Answer", "What changed", "Started all the same");
        foreach (PilotAttempt attempt in _attempts.All)
        {
            html.Markup("<tr><td>").Label(attempt.Participant).Markup("</td><th scope=\"row\">").Label(attempt.Recording).Markup("</th>")
                .Element("td", AnswerWords.Code(attempt.Answer)).Markup("<td>");
            foreach (string change in _attempts.ChangesOf(attempt))
            {
                html.Label(change).Markup("<br>");
            }

            string because = attempt.StartedBecause is { } words ? $"although {AnswerWords.Code(attempt.Answer)}, because: {words}" : string.Empty;
            html.Markup("</td><td>").Label(because).Line("</td></tr>");
        }

        html.EndTable();
    }
}
