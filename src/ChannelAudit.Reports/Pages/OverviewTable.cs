using System.Collections.Immutable;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Pages;

/// <summary>All recordings on one screen, worst first.</summary>
internal static class OverviewTable
{
    /// <summary>Writes the table.</summary>
    public static void Write(HtmlText html, ImmutableArray<RecordingDigest> recordings)
    {
        html.Line("<nav id=\"overview\" aria-label=\"Recordings\">").Table("overview", "All recordings, worst first", "Worst channel", "Recording", "Channels", "Trials, counted once a channel");
        foreach (RecordingDigest recording in recordings)
        {
            html.Markup("<tr>").VerdictCell(recording.Worst)
                .Markup($"<td><a href=\"{HtmlText.Attribute(ReportFigures.Link(recording.Id, "report.html"))}\">").Label(recording.Id).Markup("</a></td>")
                .Element("td", RunSummary.InWords(recording.ChannelCounts))
                .Element("td", RunSummary.InWords(recording.TrialCounts)).Line("</tr>");
        }

        html.EndTable().Line("</nav>");
    }
}
