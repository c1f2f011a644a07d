using System.Collections.Immutable;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Pages;

/// <summary>Recordings that could not be read.</summary>
internal static class UnreadSection
{
    /// <summary>Writes the section; nothing when there is nothing to say.</summary>
    public static void Write(HtmlText html, ImmutableArray<UnreadRecording> unreadRecordings)
    {
        if (unreadRecordings.IsEmpty)
        {
            return;
        }

        html.Line("<section>").ElementLine("h2 id=\"unread\"", "Could not be read")
            .Table("unread", "Recordings without any verdict", "Recording", "What was found", "What to do");
        foreach (UnreadRecording unread in unreadRecordings)
        {
            html.Markup("<tr><th scope=\"row\">").Label(unread.Path).Markup("</th>")
                .Element("td", unread.Message).Element("td", unread.Hint).Line("</tr>");
        }

        html.EndTable().Line("</section>");
    }
}
