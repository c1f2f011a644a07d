using System.Collections.Immutable;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Pages;

/// <summary>What could not be judged, and why: not the same as good.</summary>
internal static class GapTable
{
    /// <summary>Writes the table; nothing when everything was judged.</summary>
    public static void Write(HtmlText html, RecordingResult recording, ImmutableArray<ChannelResult> channels)
    {
        GapGroup[] gaps = [.. channels.SelectMany(channel => GapGroup.Of(channel))];
        if (gaps.Length == 0)
        {
            return;
        }

        html.ElementLine("h3", "Not assessed")
            .Table("gaps", "Questions without an answer, and why; \u201Cnot assessed\u201D does not mean good", "Channel", "Question", "Why not", "Where");
        ChannelResult? before = null;
        foreach (GapGroup gap in gaps)
        {
            string place = ReferenceEquals(gap.Channel, before) ? "<tr>" : $"<tr id=\"{Anchors.Gaps(recording.Channels.IndexOf(gap.Channel))}\">";
            before = gap.Channel;
            html.Markup($"{place}<th scope=\"row\">").Label(gap.Channel.Name).Markup("</th><td>").Text(ReasonWords.For(gap.Reason).Name)
                .Markup(" <code>").Text(gap.Reason).Markup("</code></td>").Element("td", gap.Cause).Element("td", gap.Where()).Line("</tr>");
        }

        html.EndTable();
    }
}
