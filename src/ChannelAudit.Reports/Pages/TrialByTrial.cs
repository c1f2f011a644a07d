using System.Collections.Immutable;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Tables;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Pages;

/// <summary>For each channel its trials as marks, and below them, reason by reason, the evidence that the marks lead to.</summary>
internal static class TrialByTrial
{
    /// <summary>Writes the part; that there is nothing to see when no channel was audited.</summary>
    /// <param name="html">The page.</param>
    /// <param name="recording">The recording.</param>
    /// <param name="channels">Its channels, worst first.</param>
    public static void Write(HtmlText html, RecordingResult recording, ImmutableArray<ChannelResult> channels)
    {
        html.ElementLine("h3 id=\"trials\"", "Trial by trial")
            .ElementLine("p class=\"note\"", channels.IsEmpty ? "No channel was audited." : TrialStrip.Legend);
        Dictionary<int, Trial> trials = [];
        foreach (Trial trial in recording.Trials)
        {
            trials[trial.Number] = trial;
        }

        foreach (ChannelResult channel in channels)
        {
            WriteChannel(html, recording, recording.Channels.IndexOf(channel), trials);
        }
    }

    private static void WriteChannel(HtmlText html, RecordingResult recording, int place, Dictionary<int, Trial> trials)
    {
        ChannelResult channel = recording.Channels[place];
        html.Line("<section>").Markup($"<h4 id=\"{Anchors.Channel(place)}\">").Label(channel.Name).Markup(" ")
            .Verdict(FinalVerdict.OfChannel(recording, channel)).Line("</h4>");
        DecisionSection.WriteLine(html, FinalVerdict.DecisionOn(recording, channel), channel.Verdict);
        html.ElementLine("p class=\"note\"", $"Trials: {RunSummary.InWords(VerdictCounts.OfTrials(recording, channel))}.{ByRule(recording, channel)}");
        TrialStrip.Write(html, recording, place, trials);
        ImmutableArray<ReasonGroup> groups = ReasonGroup.Of(channel);
        if (groups.IsEmpty)
        {
            html.ElementLine("p", "Nothing found.");
        }

        foreach (ReasonGroup group in groups)
        {
            WriteHead(html, recording, place, group);
            new EvidenceTable(recording, place, group, trials).Write(html);
        }

        html.Line("</section>");
    }

    private static string ByRule(RecordingResult recording, ChannelResult channel) =>
        channel.Cells.Any(cell => FinalVerdict.DecisionOn(recording, channel, cell) is not null)
            ? $" By rule alone: {RunSummary.InWords(VerdictCounts.Of(channel.Cells.Select(cell => cell.Verdict)))}. {TrialStrip.Decided} beside a mark: {DecisionWords.Short}."
            : string.Empty;

    private static void WriteHead(HtmlText html, RecordingResult recording, int place, ReasonGroup group)
    {
        html.Markup($"<h5 id=\"{HtmlText.Attribute(Anchors.Reason(place, group.Reason))}\">").Label(group.Channel.Name)
            .Text($": {ReasonPhrase.Of(recording, group.Channel, group.Reason)} ").Markup("<code>").Text(group.Reason).Line("</code></h5>").Markup("<p>");
        if (group.Worst is { } worst)
        {
            html.Text($"Seen: {worst.Text}.").Markup("<br>").Text($"Likely cause: {worst.Cause}.").Markup("<br>");
        }

        html.Text(Advice.WhatToDo(group.Reason)).Markup("<br>").Text($"Trials: {group.TrialWords()}.").Line("</p>");
    }
}
