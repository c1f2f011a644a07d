using ChannelAudit.Reports.Digests;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Pages;

/// <summary>Links from the page over all recordings into the page of one.</summary>
internal static class StudyLinks
{
    /// <summary>Opens a link; the caller writes what stands in it and closes it.</summary>
    /// <param name="html">The page.</param>
    /// <param name="id">The recording.</param>
    /// <param name="anchor">The place on its page; null for its top.</param>
    /// <param name="words">What a screen reader hears; null for what stands in the link.</param>
    public static HtmlText StudyLink(this HtmlText html, string id, string? anchor, string? words = null)
    {
        string place = anchor is null ? string.Empty : $"#{anchor}";
        string label = words is null ? string.Empty : $" aria-label=\"{HtmlText.Attribute(words)}\"";
        return html.Markup($"<a href=\"{HtmlText.Attribute(ReportFigures.Link(id, "report.html") + place)}\"{label}>");
    }

    /// <summary>A channel as shape and name, linked to its part of the recording's page.</summary>
    /// <param name="html">The page.</param>
    /// <param name="recording">The recording.</param>
    /// <param name="place">The channel's place, from 0 in file order.</param>
    public static HtmlText ChannelLink(this HtmlText html, RecordingDigest recording, int place)
    {
        ChannelDigest channel = recording.Channels[place];
        string verdict = VerdictWords.Code(channel.Verdict);
        bool isOpen = channel is { Verdict: Grade.Pass, HasGaps: true };
        string shape = isOpen ? VerdictWords.OpenPass : VerdictWords.Shape(channel.Verdict);
        return html.StudyLink(recording.Id, Anchors.Channel(place), $"{channel.Name}: {verdict}{(isOpen ? ", not everything assessed" : string.Empty)}{(channel.IsDecided ? ", " + DecisionWords.Short : string.Empty)}")
            .Markup($"<span class=\"{verdict}\" aria-hidden=\"true\">{shape}</span> ").Label(channel.Name).Markup(channel.IsDecided ? $"{TrialStrip.Decided}</a>" : "</a>");
    }
}
