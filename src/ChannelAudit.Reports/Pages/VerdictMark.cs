using ChannelAudit.Impedance;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Pages;

/// <summary>A verdict on the page: shape, word and colour together.</summary>
internal static class VerdictMark
{
    /// <summary>A cell with the verdict.</summary>
    public static HtmlText VerdictCell(this HtmlText html, Grade verdict) => html
        .Markup($"<td class=\"mark {VerdictWords.Code(verdict)}\">").Verdict(verdict).Markup("</td>");

    /// <summary>Shape and word; a screen reader hears the word only.</summary>
    public static HtmlText Verdict(this HtmlText html, Grade verdict) => html
        .Markup($"<span class=\"verdict {VerdictWords.Code(verdict)}\"><span aria-hidden=\"true\">{VerdictWords.Shape(verdict)}</span> ")
        .Markup($"{VerdictWords.Code(verdict)}</span>");

    /// <summary>The grade of readings: a hollow shape and its own word, in the colour of the text, so that it is not taken for a verdict.</summary>
    public static HtmlText ImpedanceMark(this HtmlText html, ImpedanceGrade? grade) => html
        .Markup($"<span class=\"readings\"><span aria-hidden=\"true\">{ImpedanceGradeWords.Shape(grade)}</span> {ImpedanceGradeWords.Word(grade)}</span>");

    /// <summary>A computed verdict with the final one behind it when a decision changed it.</summary>
    public static HtmlText VerdictCell(this HtmlText html, Grade computed, Grade final)
    {
        if (computed == final)
        {
            return html.VerdictCell(final);
        }

        return html.Markup($"<td class=\"mark {VerdictWords.Code(final)}\">").Verdict(final)
            .Markup("<br>decided; computed: ").Verdict(computed).Markup("</td>");
    }
}
