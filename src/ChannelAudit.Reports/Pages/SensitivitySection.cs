using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Pages;

/// <summary>On which limits the exclusions of a run hang, on the page.</summary>
/// <param name="tally">The run.</param>
/// <param name="picture">The picture as PNG; null for none.</param>
public sealed class SensitivitySection(SensitivityTally tally, ReadOnlyMemory<byte>? picture)
{
    /// <summary>Writes the section.</summary>
    internal void Write(HtmlText html)
    {
        html.Line("<section>").ElementLine("h2 id=\"limits-moved\"", SensitivityWords.Title)
            .ElementLine("p", string.Join(' ', SensitivityWords.Sentences(tally)));
        if (tally.Recordings > 0)
        {
            WritePicture(html);
            WriteTable(html);
        }

        html.Line("<p class=\"note\">\u201CTwice\u201D tolerates twice as much fault, whatever a limit counts in; "
            + $"<a href=\"{SensitivityTsv.FileName}\">{SensitivityTsv.FileName}</a> has all counts.</p>").Line("</section>");
    }

    private void WritePicture(HtmlText html)
    {
        if (picture is { } png)
        {
            string description = "Rejected and questionable trials against the factor on the limits, one panel a reason. The table below says the same in numbers.";
            html.Line($"<a href=\"{SensitivityFigure.FileName}\"><img src=\"data:image/png;base64,{Convert.ToBase64String(png.Span)}\" alt=\"{HtmlText.Attribute(description)}\"></a>");
        }
    }

    private void WriteTable(HtmlText html)
    {
        double[] factors = [.. MovedLimits.Factors.Append(1).Order()];
        html.Table(
            "moved", "Rejected trials, and in brackets questionable ones, by limits that tolerate more or less", ["Limits moved", .. factors.Select(SensitivityWords.Factor)]);
        foreach (string reason in tally.ReasonsOfTrials.Prepend(MovedLimits.AllReasons))
        {
            html.Markup("<tr><th scope=\"row\">").Text(SensitivityWords.Name(reason)).Markup("</th>");
            foreach (double factor in factors)
            {
                GradeCounts trials = tally.Row(reason, factor).Trials;
                html.Element("td class=\"number\"", $"{trials.Reject.Plain()} ({trials.Questionable.Plain()})");
            }

            html.Line("</tr>");
        }

        html.EndTable();
    }
}
