using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Pages;

/// <summary>What was found, with the numbers, their limits, the stretch of time and the likely cause.</summary>
internal static class FindingTable
{
    /// <summary>Writes the table; nothing when nothing was found.</summary>
    public static void Write(HtmlText html, RecordingResult recording, ImmutableArray<ChannelResult> channels)
    {
        ReasonGroup[] groups = [.. channels.SelectMany(channel => ReasonGroup.Of(channel))];
        if (groups.Length == 0)
        {
            return;
        }

        html.ElementLine("h3", "Findings").Table(
            "findings",
            "For each channel and reason the worst finding with its evidence, and every trial that carries the reason",
            "Grade", "Channel", "What", "Evidence", "Effect on the score", "When", "Trials");
        foreach (ReasonGroup group in groups)
        {
            WriteRow(html, recording, group);
        }

        html.EndTable();
    }

    private static void WriteRow(HtmlText html, RecordingResult recording, ReasonGroup group)
    {
        Finding worst = group.Worst;
        html.Markup("<tr>").VerdictCell(worst.Grade).Markup("<th scope=\"row\">").Label(group.Channel.Name).Markup("</th><td><strong>")
            .Text(ReasonPhrase.Of(recording, group.Channel, worst)).Markup("</strong><br>")
            .Text($"{worst.Text}; likely cause: {worst.Cause}").Markup("<br><code>").Text(group.Reason).Markup("</code></td><td><ul>");
        foreach (Evidence evidence in worst.Evidence)
        {
            html.Markup("<li><code>").Text(evidence.Measure).Markup("</code> ")
                .Text($"{Quantities.WithUnit(evidence.Value, evidence.Unit)}, limit {Quantities.WithUnit(evidence.Limit, evidence.Unit)}").Markup("</li>");
        }

        html.Markup("</ul></td>").Element("td", EffectWords.Of(worst.Effect)).Element("td", When(worst)).Element("td", Trials(group)).Line("</tr>");
    }

    private static string When(Finding finding)
    {
        string when = Quantities.Stretch(finding.FromS, finding.ToS);
        when = finding.Trial is { } trial ? $"{when}, trial {trial.Plain()}" : when;
        when = finding.InBaseline ? $"{when}, in its baseline" : when;
        return finding.FromQuietStretches ? $"{when}, said by the quiet stretches around it" : when;
    }

    private static string Trials(ReasonGroup group) => group.Trials.Length switch
    {
        0 => "none of its own",
        1 => $"1 of {group.Channel.Cells.Length.Plain()}: {group.Trials[0].Plain()}",
        _ when group.Trials.Length == group.Channel.Cells.Length => $"all {group.Trials.Length.Plain()}",
        _ => $"{group.Trials.Length.Plain()} of {group.Channel.Cells.Length.Plain()}: {TrialList.Of(group.Trials)}",
    };
}
