using System.Collections.Immutable;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;

namespace ChannelAudit.Reports.Pages;

/// <summary>All recordings of a run, one row each, worst first.</summary>
internal sealed class OverviewTable
{
    private readonly ImmutableArray<RecordingDigest> _recordings;
    private readonly bool _hasParticipants;
    private readonly bool _hasGroups;

    /// <summary>For some recordings, worst first.</summary>
    public OverviewTable(ImmutableArray<RecordingDigest> recordings)
    {
        _recordings = recordings;
        _hasParticipants = recordings.Any(recording => recording.Participant is not null);
        _hasGroups = recordings.Any(recording => recording.Group is not null);
    }

    /// <summary>Writes the section.</summary>
    public void Write(HtmlText html)
    {
        string[] heads =
        [
            "Verdict", "Recording", .. _hasParticipants ? new[] { "Participant" } : [], .. _hasGroups ? new[] { "Group" } : [],
            "Channels", "Trials rejected", "Trials questionable", "Trials passed", "Reasons",
        ];
        html.Line("<section class=\"all\">").ElementLine("h2 id=\"recordings\"", "All recordings").Table(
            "overview",
            "Worst first. The verdict is that of the worst channel; each channel leads to its trials and their evidence. "
            + VerdictWords.Legend + ". Trials are counted once a channel"
            + (_recordings.Any(recording => recording.IsDecided) ? $". {TrialStrip.Decided} {DecisionWords.Short}" : string.Empty),
            heads);
        foreach (RecordingDigest recording in _recordings)
        {
            WriteRow(html, recording);
        }

        html.EndTable().Line("</section>");
    }

    private void WriteRow(HtmlText html, RecordingDigest recording)
    {
        html.Markup("<tr>").VerdictCell(recording.ComputedWorst, recording.Worst)
            .Markup("<th scope=\"row\">").StudyLink(recording.Id, anchor: null).Label(recording.Id).Markup("</a></th>");
        WriteKnown(html, _hasParticipants, recording.Participant);
        WriteKnown(html, _hasGroups, recording.Group);
        html.Markup("<td><div class=\"marks\">");
        for (int place = 0; place < recording.Channels.Length; place++)
        {
            html.ChannelLink(recording, place);
        }

        html.Markup("</div></td>");
        VerdictCounts trials = recording.TrialCounts;
        foreach (int number in new[] { trials.Reject, trials.Questionable, trials.Pass })
        {
            html.Element("td class=\"number\"", number.Plain());
        }

        WriteReasons(html, recording);
        html.Line("</tr>");
    }

    private static void WriteReasons(HtmlText html, RecordingDigest recording)
    {
        string reasons = RecordingReasons.Of(recording);
        string words = !recording.IsDecided ? reasons : reasons.Length == 0 ? DecisionWords.Short : $"{reasons}; {DecisionWords.Short}";
        html.Markup("<td>").Text(words);
        if (RecordingReasons.Also(recording) is { } also)
        {
            html.Markup(words.Length > 0 ? "<br>" : string.Empty).Markup($"<a href=\"#{AlsoNoticedSection.Anchor}\">").Text($"also: {also}").Markup("</a>");
        }

        html.Markup("</td>");
    }

    private static void WriteKnown(HtmlText html, bool hasColumn, string? text)
    {
        if (hasColumn)
        {
            html.Markup("<td>").Label(text ?? "n/a").Markup("</td>");
        }
    }
}
