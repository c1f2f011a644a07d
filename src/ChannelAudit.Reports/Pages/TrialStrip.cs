using System.Collections.Immutable;
using ChannelAudit.Reports.Figures;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Pages;

/// <summary>The trials of a channel as a row of small marks, each a link to its evidence.</summary>
internal static class TrialStrip
{
    /// <summary>What the marks mean.</summary>
    public const string Legend =
        "One mark a trial, under its number: " + VerdictWords.Legend + ". "
        + "The letter beside it is that of the worst reason. Marks with a thick line below are links to what was found.";

    /// <summary>What stands beside the mark of a trial that a person decided about.</summary>
    public const string Decided = "*";

    /// <summary>Writes the row; that there are no trials when there are none.</summary>
    /// <param name="html">The page.</param>
    /// <param name="recording">The recording.</param>
    /// <param name="channel">Its channel, by its place in file order.</param>
    /// <param name="trials">The recording's trials by number.</param>
    public static void Write(HtmlText html, RecordingResult recording, int channel, IReadOnlyDictionary<int, Trial> trials)
    {
        ImmutableArray<CellResult> cells = recording.Channels[channel].Cells;
        if (cells.IsEmpty)
        {
            html.ElementLine("p class=\"note\"", "The recording has no trials.");
            return;
        }

        html.Line($"<ol class=\"cells\" aria-label=\"{HtmlText.Attribute($"Trials of {recording.Channels[channel].Name}")}\">");
        foreach (CellResult cell in cells)
        {
            CellMark mark = CellMark.Of(recording, channel, cell, trials.GetValueOrDefault(cell.Trial));
            html.Markup("<li>").Markup(mark.Target is { } target
                ? $"<a class=\"{mark.Class}\" href=\"#{HtmlText.Attribute(target)}\" title=\"{HtmlText.Attribute($"trial {cell.Trial.Plain()}{mark.Words}")}\">"
                : $"<span class=\"{mark.Class}\">");
            WriteContent(html, cell, mark);
            html.Line(mark.Target is null ? "</span></li>" : "</a></li>");
        }

        html.Line("</ol>");
    }

    // The eye sees number, shape and letter; a screen reader hears number and words.
    private static void WriteContent(HtmlText html, CellResult cell, CellMark mark)
    {
        string letter = cell.Reasons.IsEmpty ? string.Empty : $"<i>{ReasonLetters.For(cell.Reasons[0])}</i>";
        html.Markup($"<b><span class=\"unseen\">trial </span>{cell.Trial.Plain()}</b><span aria-hidden=\"true\">{mark.Shape}{letter}{(mark.IsDecided ? Decided : string.Empty)}</span>")
            .Element("span class=\"unseen\"", mark.Words);
    }
}
