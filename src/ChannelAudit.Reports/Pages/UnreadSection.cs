using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Pages;

/// <summary>Recordings that could not be read, and warnings that belong to none.</summary>
internal static class UnreadSection
{
    /// <summary>Writes the section; nothing when there is nothing to say.</summary>
    public static void Write(HtmlText html, AuditRun run, ImmutableArray<UnreadRecording> unreadRecordings)
    {
        if (!unreadRecordings.IsEmpty)
        {
            html.Line("<section>").ElementLine("h2 id=\"unread\"", "Could not be read")
                .Table("unread", "Recordings without any verdict", "Recording", "What was found", "What to do");
            foreach (UnreadRecording unread in unreadRecordings)
            {
                html.Markup("<tr><th scope=\"row\">").Label(unread.Path).Markup("</th>")
                    .Element("td", unread.Message).Element("td", unread.Hint).Line("</tr>");
            }

            html.EndTable().Line("</section>");
        }

        if (!run.Warnings.IsEmpty)
        {
            html.Line("<section>").ElementLine("h2", "Odd, but read all the same").Line("<ul>");
            foreach (Warning warning in run.Warnings)
            {
                html.Markup("<li>").Label(warning.File).Text($", {warning.Place}: {warning.Message}").Line("</li>");
            }

            html.Line("</ul>").Line("</section>");
        }
    }
}
