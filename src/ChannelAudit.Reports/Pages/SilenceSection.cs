using System.Collections.Immutable;
using ChannelAudit.Detectability;
using ChannelAudit.Reports.Silence;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Pages;

/// <summary>What silence means in recordings whose owner asked, on the page.</summary>
internal static class SilenceSection
{
    /// <summary>Where it is on the page.</summary>
    public const string Anchor = "silence";

    /// <summary>Writes the section; nothing when nobody asked.</summary>
    public static void Write(HtmlText html, ImmutableArray<KeptStudy> studies)
    {
        if (studies.IsEmpty)
        {
            return;
        }

        html.Line("<section>").ElementLine($"h2 id=\"{Anchor}\"", SilenceWords.Title);
        foreach (KeptStudy study in studies)
        {
            html.Markup("<h3>").Label(study.Result.Id).Line("</h3>").ElementLine("p", SilenceWords.Done(study.Result));
            WriteTable(html, study.Result);
            WriteOpen(html, SilenceWords.NotPlanted(study.Result));
            html.Markup("<p class=\"note\">Models of faults, not faults; curves and counts: ")
                .Markup($"<a href=\"{HtmlText.Attribute(ReportFigures.Link(study.Result.Id, SilenceFiles.Picture))}\">{SilenceFiles.Picture}</a>, ")
                .Markup($"<a href=\"{HtmlText.Attribute(ReportFigures.Link(study.Result.Id, SilenceFiles.Table))}\">{SilenceFiles.Table}</a>. ")
                .Text($"SHA-256 of {SilenceFiles.Json}: ").Element("code", study.Sha256).Line("</p>");
        }

        html.Line("</section>");
    }

    private static void WriteTable(HtmlText html, DetectabilityResult result)
    {
        html.Table("silence", "Planted faults, found for the right reason", "Fault", "Size counted in", "Found 9 times in 10", "Found half of the time", "At the worst size planted");
        foreach (DetectedFault fault in SilenceWords.Planted(result))
        {
            DetectedPoint worst = fault.Points[^1];
            html.Markup("<tr><th scope=\"row\">").Text(fault.Title).Markup("</th>").Element("td", fault.Unit)
                .Element("td", SilenceWords.From(fault, SilenceWords.Mostly)).Element("td", SilenceWords.From(fault, SilenceWords.Half))
                .Element("td", $"{Quantities.Short(worst.Size)}: {SilenceWords.Count(worst)}").Line("</tr>");
        }

        html.EndTable();
    }

    private static void WriteOpen(HtmlText html, ImmutableArray<DetectedFault> open)
    {
        if (open.IsEmpty)
        {
            return;
        }

        html.Line("<p>Not assessed: silence about these means nothing.</p><ul>");
        foreach (DetectedFault fault in open)
        {
            html.ElementLine("li", $"{SilenceWords.NameOf(fault)}: {fault.NotAssessed}");
        }

        html.Line("</ul>");
    }
}
