using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Pages;

/// <summary>The evidence for one reason of a channel: a row for what holds over the recording, and one for each trial.</summary>
internal sealed class EvidenceTable
{
    private readonly RecordingResult _recording;
    private readonly int _channel;
    private readonly ReasonGroup _group;
    private readonly IReadOnlyDictionary<int, Trial> _trials;

    /// <summary>For one channel and reason.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channel">Its channel, by its place in file order.</param>
    /// <param name="group">The reason, and all that the channel has against it.</param>
    /// <param name="trials">The recording's trials by number.</param>
    public EvidenceTable(RecordingResult recording, int channel, ReasonGroup group, IReadOnlyDictionary<int, Trial> trials) =>
        (_recording, _channel, _group, _trials) = (recording, channel, group, trials);

    /// <summary>Writes the table.</summary>
    public void Write(HtmlText html)
    {
        html.Table(
            "evidence",
            $"{_group.Channel.Name}, {ReasonWords.For(_group.Reason).Name}: every finding with its numbers beside the limits that they passed",
            "Trial", "Grade", "When", "Measured", "Effect on the score", "Also found");
        foreach (EvidenceRow row in EvidenceRow.Of(_recording, _group.Channel, _group.Reason))
        {
            WriteRow(html, row);
        }

        html.EndTable();
    }

    private void WriteRow(HtmlText html, EvidenceRow row)
    {
        html.Markup(row.Cell is { } one ? $"<tr id=\"{HtmlText.Attribute(AnchorOf(one, _group.Reason))}\">" : "<tr>").Markup("<th scope=\"row\">");
        if (row.Cell is { } cell)
        {
            html.Text($"{cell.Trial.Plain()} ").Label(_trials.GetValueOrDefault(cell.Trial)?.Label ?? string.Empty);
        }
        else
        {
            html.Text("the channel");
        }

        html.Markup("</th>").VerdictCell(row.Findings.IsEmpty ? row.Cell?.Verdict ?? Grade.Questionable : row.Findings[0].Grade);
        List(html, row.Findings.Select(finding => When(row, finding)));
        html.Markup("<td>");
        WriteMeasured(html, row);
        WriteWhy(html, row);
        html.Markup("</td>");
        List(html, row.Findings.Select(finding => EffectWords.Of(finding.Effect)).Where(effect => effect.Length > 0));
        WriteOthers(html, row.Cell);
        html.Line("</tr>");
    }

    private static void WriteMeasured(HtmlText html, EvidenceRow row)
    {
        html.Markup("<ul>");
        foreach (Evidence evidence in row.Findings.SelectMany(finding => finding.Evidence))
        {
            html.Markup("<li><code>").Text(evidence.Measure).Markup("</code> ")
                .Text($"{Quantities.WithUnit(evidence.Value, evidence.Unit)}, limit {Quantities.WithUnit(evidence.Limit, evidence.Unit)}").Markup("</li>");
        }

        if (row.Findings.IsEmpty)
        {
            foreach (NotAssessed question in row.Cell?.NotAssessed ?? [])
            {
                html.Element("li", $"{ReasonWords.For(question.Reason).Name} not assessed: {question.Cause}");
            }
        }

        html.Markup("</ul>");
    }

    // What the head says already is shown again only where a link has led to the row.
    private void WriteWhy(HtmlText html, EvidenceRow row)
    {
        string[] causes = [.. row.Findings.Select(WordsOf).Distinct(StringComparer.Ordinal)];
        bool isNew = causes.Any(cause => _group.Worst is null || !string.Equals(cause, WordsOf(_group.Worst), StringComparison.Ordinal));
        foreach (string cause in causes)
        {
            html.Element(isNew ? "div" : "div class=\"more\"", cause);
        }

        if (row.Cell is not null)
        {
            html.Element("div class=\"more\"", Advice.WhatToDo(_group.Reason));
        }
    }

    private void WriteOthers(HtmlText html, CellResult? cell)
    {
        string[] others = [.. (cell?.Reasons ?? []).Where(reason => !string.Equals(reason, _group.Reason, StringComparison.Ordinal))];
        html.Markup("<td>");
        for (int other = 0; other < others.Length; other++)
        {
            html.Markup(other > 0 ? ", " : string.Empty)
                .Markup($"<a href=\"#{HtmlText.Attribute(AnchorOf(cell!, others[other]))}\">").Text(ReasonWords.For(others[other]).Name).Markup("</a>");
        }

        html.Markup("</td>");
    }

    private string AnchorOf(CellResult cell, string reason) => string.Equals(cell.Reasons[0], reason, StringComparison.Ordinal)
        ? Anchors.Cell(_channel, cell.Trial)
        : Anchors.Cell(_channel, cell.Trial, reason);

    /// <summary>What was seen and why, in a sentence.</summary>
    internal static string WordsOf(Finding finding) => $"{finding.Text}; likely cause: {finding.Cause}";

    private static string When(EvidenceRow row, Finding finding)
    {
        string when = Quantities.Stretch(finding.FromS, finding.ToS);
        when = finding.InBaseline ? $"{when}, in its baseline" : when;
        when = row.IsCarried ? $"{when}, found in the channel" : when;
        return finding.FromQuietStretches ? $"{when}, said by the quiet stretches around it" : when;
    }

    private static void List(HtmlText html, IEnumerable<string> items)
    {
        string[] all = [.. items.Distinct(StringComparer.Ordinal)];
        html.Markup("<td>");
        for (int item = 0; item < all.Length; item++)
        {
            html.Markup(item > 0 ? "<br>" : string.Empty).Text(all[item]);
        }

        html.Markup("</td>");
    }
}
