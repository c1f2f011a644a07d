using System.Collections.Immutable;
using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Studies;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Pages;

/// <summary>What stands out over all recordings: the worst of them, the reasons counted, conditions that lack trials.</summary>
internal static class StandsOut
{
    private const int MostRecordings = 10;
    private static readonly string[] First = [OddKind.SameFile, OddKind.SameSignal, OddKind.SameEvents, OddKind.Length, OddKind.Gain];

    /// <summary>Writes the section.</summary>
    /// <param name="html">The page.</param>
    /// <param name="digest">The run.</param>
    /// <param name="worstFirst">Its recordings, worst first.</param>
    public static void Write(HtmlText html, RunDigest digest, ImmutableArray<RecordingDigest> worstFirst)
    {
        ImmutableArray<StudyReason> reasons = StudyReason.Of(worstFirst);
        html.Line("<section>").ElementLine("h2 id=\"stands-out\"", "What stands out").ElementLine("p", string.Join(' ', StudyLead.Of(digest, reasons)));
        if (!digest.Unread.IsEmpty)
        {
            html.Markup("<p><a href=\"#unread\">").Text($"{Quantities.Many(digest.Unread.Length, "recording")} could not be read")
                .Line("</a>: without any verdict.</p>");
        }

        WriteOdd(html, digest.Odd);
        WriteWorst(html, worstFirst);
        WriteReasons(html, reasons);
        WriteTooFew(html, worstFirst);
        html.Line("</section>");
    }

    // No verdict shows them, and they change every number of a study.
    private static void WriteOdd(HtmlText html, ImmutableArray<StudyFinding> odd)
    {
        StudyFinding[] first = [.. odd.Where(one => First.Contains(one.Kind, StringComparer.Ordinal))];
        if (first.Length == 0)
        {
            return;
        }

        html.ElementLine("h3", "Look at these first: no verdict shows it").Line("<ul class=\"first\">");
        foreach (StudyFinding one in first.Take(MostRecordings))
        {
            html.Markup("<li>").Text($"{StudyWords.Kind(one.Kind)}: ");
            for (int i = 0; i < one.Recordings.Length && i < MostRecordings; i++)
            {
                html.Text(i > 0 ? ", " : string.Empty).StudyLink(one.Recordings[i], anchor: null).Label(one.Recordings[i]).Markup("</a>");
            }

            html.Text(one.Recordings.Length > MostRecordings ? $" and {(one.Recordings.Length - MostRecordings).Plain()} more" : string.Empty);
            if (one.Channel is { } channel)
            {
                html.Text(", ").Label(channel);
            }

            html.Text($": {one.Text}. {one.ToDo}").Line("</li>");
        }

        html.Line("</ul>").Line("<p class=\"note\">All that is <a href=\"#odd\">other than the rest of the study</a>.</p>");
    }

    private static void WriteWorst(HtmlText html, ImmutableArray<RecordingDigest> worstFirst)
    {
        RecordingDigest[] bad = [.. worstFirst.Where(recording => recording.Worst != Grade.Pass)];
        if (bad.Length == 0)
        {
            return;
        }

        html.ElementLine("h3", "Worst first").Line("<ol class=\"worst\">");
        foreach (RecordingDigest recording in bad.Take(MostRecordings))
        {
            html.Markup("<li>").StudyLink(recording.Id, anchor: null).Label(recording.Id).Line("</a><ul>");
            IEnumerable<int> places = Enumerable.Range(0, recording.Channels.Length).Where(place => recording.Channels[place].Verdict != Grade.Pass);
            foreach (int place in places.OrderByDescending(place => recording.Channels[place].Verdict))
            {
                WriteChannel(html, recording, place);
            }

            html.Line("</ul></li>");
        }

        html.Line("</ol>");
        if (bad.Length > MostRecordings)
        {
            html.Markup("<p class=\"note\">")
                .Text($"{(bad.Length - MostRecordings).Plain()} more in the table of ").Line("<a href=\"#recordings\">all recordings</a>.</p>");
        }
    }

    private static void WriteChannel(HtmlText html, RecordingDigest recording, int place)
    {
        ChannelDigest channel = recording.Channels[place];
        html.Markup("<li>").ChannelLink(recording, place).Text($" {VerdictWords.Code(channel.Verdict)}")
            .Text(channel.Verdict == channel.Computed ? string.Empty : $" ({DecisionWords.Short}; computed: {VerdictWords.Code(channel.Computed)})");
        ImmutableArray<ReasonTrials> counted = [.. channel.ByReason.Where(reason => channel.Reasons.Contains(reason.Reason, StringComparer.Ordinal))];
        for (int reason = 0; reason < counted.Length; reason++)
        {
            string trials = counted[reason].Trials == 0
                ? string.Empty
                : $" in {counted[reason].Trials.Plain()} of {Quantities.Many(channel.Trials.Total, "trial")}";
            html.Markup(reason == 0 ? ": " : ", ").StudyLink(recording.Id, Anchors.Reason(place, counted[reason].Reason))
                .Text(ReasonWords.For(counted[reason].Reason).Name).Markup("</a>").Text(counted[reason].Note is { } note ? $" ({note})" : string.Empty).Text(trials);
        }

        html.Line("</li>");
    }

    private static void WriteReasons(HtmlText html, ImmutableArray<StudyReason> reasons)
    {
        if (reasons.IsEmpty)
        {
            return;
        }

        html.ElementLine("h3", "Reasons counted").Table(
            "reasons",
            "The commonest first; trials are counted once a channel, channels where their verdict rests on the reason",
            "Reason", "Trials", "Channels", "Recordings", "For instance");
        foreach (StudyReason reason in reasons)
        {
            html.Markup("<tr><th scope=\"row\">").Text(ReasonWords.For(reason.Reason).Name).Markup(" <code>").Text(reason.Reason).Markup("</code></th>");
            foreach (int number in new[] { reason.Trials, reason.Channels, reason.Recordings })
            {
                html.Element("td class=\"number\"", number.Plain());
            }

            html.Markup("<td>").StudyLink(reason.FirstRecording.Id, Anchors.Reason(reason.FirstChannel, reason.Reason))
                .Label(reason.FirstRecording.Id).Text(", ").Label(reason.FirstRecording.Channels[reason.FirstChannel].Name).Markup("</a></td>").Line("</tr>");
        }

        html.EndTable();
    }

    // One row a recording: a study with a hundred short conditions must not bury its other tables.
    private static void WriteTooFew(HtmlText html, ImmutableArray<RecordingDigest> worstFirst)
    {
        RecordingDigest[] lacking = [.. worstFirst.Where(recording => !recording.TooFew.IsEmpty)];
        if (lacking.Length == 0)
        {
            return;
        }

        html.ElementLine("h3", "Conditions with too few usable trials");
        bool isFolded = lacking.Length > MostRecordings;
        if (isFolded)
        {
            html.Line("<details>").ElementLine("summary", $"Show all {lacking.Length.Plain()} recordings");
        }

        html.Table(
            "lacking",
            "Usable trials of those that the condition needs, by channel; all counts are in conditions.tsv",
            "Recording", "Condition: usable of needed");
        foreach (RecordingDigest recording in lacking)
        {
            html.Markup("<tr><th scope=\"row\">").StudyLink(recording.Id, "conditions").Label(recording.Id).Markup("</a></th><td><ul>");
            foreach (IGrouping<string, ConditionCount> channel in recording.TooFew.GroupBy(count => count.Channel, StringComparer.Ordinal))
            {
                html.Markup("<li>").Label(channel.Key).Text(": ");
                WriteCounts(html, [.. channel]);
                html.Markup("</li>");
            }

            html.Line("</ul></td></tr>");
        }

        html.EndTable().Line(isFolded ? "</details>" : string.Empty);
    }

    private static void WriteCounts(HtmlText html, ConditionCount[] counts)
    {
        for (int one = 0; one < counts.Length; one++)
        {
            html.Markup(one > 0 ? ", " : string.Empty).Label(counts[one].Condition ?? "no label")
                .Text($" {counts[one].Usable.Plain()} of {counts[one].Minimum.Plain()}");
        }
    }
}
