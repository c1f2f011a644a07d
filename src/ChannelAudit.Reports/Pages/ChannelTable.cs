using System.Collections.Immutable;
using ChannelAudit.Impedance;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Pages;

/// <summary>The channels of a recording, worst first, with reasons in words.</summary>
internal static class ChannelTable
{
    /// <summary>Writes the table.</summary>
    public static void Write(HtmlText html, RecordingResult recording, ImmutableArray<ChannelResult> channels)
    {
        bool hasReadings = recording.Impedance is not null;
        string caption = "Verdict of each channel, worst first; trials by their own verdict" + (hasReadings ? ". Readings and signal are graded apart" : string.Empty);
        string[] heads = ["Verdict", "Channel", "Why", "Not assessed", "Trials"];
        html.ElementLine("h3 id=\"channels\"", "Channels").Table("channels", caption, hasReadings ? [.. heads, "Impedance"] : heads);
        foreach (ChannelResult channel in channels)
        {
            html.Markup("<tr>").VerdictCell(channel.Verdict, FinalVerdict.OfChannel(recording, channel))
                .Markup($"<th scope=\"row\"><a href=\"#{Anchors.Channel(recording.Channels.IndexOf(channel))}\">").Label(channel.Name).Markup("</a></th>");
            WriteList(html, [.. ReasonPhrase.All(recording, channel)], "nothing found");
            WriteList(html, Gaps(channel), "nothing");
            html.Element("td", RunSummary.InWords(VerdictCounts.OfTrials(recording, channel)));
            if (hasReadings)
            {
                ImpedanceGrade? grade = recording.Impedance!.Site(channel.Name)?.Grade;
                html.Markup("<td>").ImpedanceMark(grade).Markup("</td>");
            }

            html.Line("</tr>");
        }

        html.EndTable();
    }

    private static string[] Gaps(ChannelResult channel) =>
    [
        .. GapGroup.Of(channel).Select(gap => $"{ReasonWords.For(gap.Reason).Name} ({gap.Where()})").Distinct(StringComparer.Ordinal),
    ];

    private static void WriteList(HtmlText html, string[] items, string none)
    {
        if (items.Length == 0)
        {
            html.Element("td", none);
            return;
        }

        html.Markup("<td><ul>");
        foreach (string item in items)
        {
            html.Element("li", item);
        }

        html.Markup("</ul></td>");
    }
}
