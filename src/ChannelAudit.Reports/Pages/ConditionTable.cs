using System.Collections.Immutable;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Pages;

/// <summary>Usable trials by condition.</summary>
internal static class ConditionTable
{
    /// <summary>Writes the table, or why there is none.</summary>
    public static void Write(HtmlText html, RecordingResult recording)
    {
        ImmutableArray<ConditionCount> counts = ConditionCounts.Of(recording);
        html.ElementLine("h3 id=\"conditions\"", "Usable trials by condition");
        if (counts.IsEmpty)
        {
            html.ElementLine("p class=\"note\"", "No trial of this recording is scored: all of them are rest or tasks, or there are none.");
            return;
        }

        html.Table(
            "conditions",
            $"Usable: the final verdict is not reject. {Quantities.Many(recording.MinimumTrials, "usable trial")} needed.",
            "Channel", "Condition", "Usable", "Of", "Pass", "Questionable", "Reject", "Enough?");
        foreach (ConditionCount count in counts)
        {
            html.Markup("<tr><th scope=\"row\">").Label(count.Channel).Markup("</th><td>").Label(count.Condition ?? "no label").Markup("</td>");
            foreach (int number in new[] { count.Usable, count.Trials, count.Pass, count.Questionable, count.Reject })
            {
                html.Element("td class=\"number\"", number.Plain());
            }

            html.Element("td", count.Enough ? "enough" : "too few").Line("</tr>");
        }

        html.EndTable();
    }
}
