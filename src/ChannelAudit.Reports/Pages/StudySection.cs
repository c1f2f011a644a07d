using System.Collections.Immutable;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Studies;

namespace ChannelAudit.Reports.Pages;

/// <summary>Recordings other than the rest of their study, on the page.</summary>
internal static class StudySection
{
    /// <summary>Writes the section; nothing when nothing was found.</summary>
    public static void Write(HtmlText html, ImmutableArray<StudyFinding> odd)
    {
        if (odd.IsEmpty)
        {
            return;
        }

        html.Line("<section id=\"odd\">").ElementLine("h2", StudyWords.Title)
            .Table("odd", StudyWords.Apart, "In what", "Recordings", "Channel", "What was seen", "What to do");
        foreach (StudyFinding one in odd)
        {
            html.Markup("<tr><th scope=\"row\">").Text(StudyWords.Kind(one.Kind)).Markup("</th><td>");
            for (int i = 0; i < one.Recordings.Length; i++)
            {
                html.Text(i > 0 ? ", " : string.Empty).Label(one.Recordings[i]);
            }

            html.Markup("</td><td>").Label(one.Channel ?? "all").Markup("</td>").Element("td", one.Text).Element("td", one.ToDo).Line("</tr>");
        }

        html.EndTable().Line("</section>");
    }
}
