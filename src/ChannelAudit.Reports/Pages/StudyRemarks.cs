using System.Collections.Immutable;

namespace ChannelAudit.Reports.Pages;

/// <summary>What shows only across the recordings of a study.</summary>
internal static class StudyRemarks
{
    /// <summary>Writes the list; nothing when there is nothing to say.</summary>
    public static void Write(HtmlText html, ImmutableArray<StudyRemark> remarks)
    {
        if (remarks.IsEmpty)
        {
            return;
        }

        html.ElementLine("h3", "Different from the others; changes no verdict").Line("<ul>");
        foreach (StudyRemark remark in remarks)
        {
            string? place = remark.Channel is { } channel ? Anchors.Channel(channel) : null;
            html.Markup("<li>").StudyLink(remark.RecordingId, place).Label(remark.RecordingId).Markup("</a>: ")
                .Text(remark.Text).Line("</li>");
        }

        html.Line("</ul>");
    }
}
