using System.Collections.Immutable;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Pages;

/// <summary>All recordings on one screen, worst first.</summary>
internal static class OverviewTable
{
    /// <summary>Writes the table.</summary>
    public static void Write(HtmlText html, ImmutableArray<RecordingResult> recordings)
    {
        html.Line("<nav id=\"overview\" aria-label=\"Recordings\">").Table("overview", "All recordings, worst first", "Worst channel", "Recording", "Channels", "Trials, counted once a channel");
        for (int place = 0; place < recordings.Length; place++)
        {
            RecordingResult recording = recordings[place];
            html.Markup("<tr>").VerdictCell(WorstFirst.Worst(recording))
                .Markup($"<td><a href=\"#recording-{(place + 1).Plain()}\">").Label(recording.Id).Markup("</a></td>")
                .Element("td", RunSummary.InWords(VerdictCounts.OfChannels([recording])))
                .Element("td", RunSummary.InWords(VerdictCounts.OfTrials([recording]))).Line("</tr>");
        }

        html.EndTable().Line("</nav>");
    }
}
